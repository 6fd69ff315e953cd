// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "reports/plot/plot.h"

#include <QWidget>

#include <vector>

namespace sumpbook::window {

/// Pictures that belong together: side by side where each gets enough width, else one below the other.
class FigureRow final : public QWidget {
public:
    explicit FigureRow(QWidget* parent = nullptr);
    void add(const plot::Plot& plot);
    [[nodiscard]] bool hasHeightForWidth() const override { return true; }
    [[nodiscard]] int heightForWidth(int width) const override;
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    [[nodiscard]] int columns_in(int width) const;
    [[nodiscard]] std::vector<QRect> places_in(int width) const;

    struct Placed {
        QWidget* chart;
        plot::Plot plot;
    };
    std::vector<Placed> charts_;
};

/// How high a picture of this width should be, in pixels: as its layout says, within reason.
[[nodiscard]] int wished_height_px(const plot::Plot& plot, int width);

} // namespace sumpbook::window
