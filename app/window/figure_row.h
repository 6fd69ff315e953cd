// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "reports/plot/plot.h"

#include <QLabel>
#include <QWidget>

#include <vector>

namespace sumpbook::window {

/// Pictures that belong together: side by side where each gets enough width, else one below the other.
class FigureRow final : public QWidget {
public:
    explicit FigureRow(QWidget* parent = nullptr);
    void add(const plot::Plot& plot);
    /// How high a picture can be and still be seen whole: a list that is only a little longer is drawn
    /// closer.
    void set_room(int height_px);
    [[nodiscard]] bool hasHeightForWidth() const override { return true; }
    [[nodiscard]] int heightForWidth(int width) const override;
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void place();
    [[nodiscard]] int columns_in(int width) const;
    [[nodiscard]] std::vector<QRect> places_in(int width) const;

    struct Placed {
        QWidget* chart;
        QLabel* caption; ///< Its description; null where a list beside the picture says the same.
        plot::Plot plot;
    };
    [[nodiscard]] int height_of(const Placed& placed, int width) const;

    std::vector<Placed> charts_;
    int room_px_ = 0; ///< 0: not known.
};

/// How high a picture of this width should be, in pixels: as its layout says, within reason; a list closer
/// where it is then seen whole in `room`.
[[nodiscard]] int wished_height_px(const plot::Plot& plot, int width, int room = 0);

} // namespace sumpbook::window
