// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/opened.h"
#include "reports/document/document.h"

#include <QAbstractListModel>
#include <QListView>

#include <functional>
#include <string>
#include <vector>

namespace sumpbook::window {

/// One line of the list at the side.
struct BikeLine {
    std::string name;
    std::string made;         ///< "Wexcombe Curlew 500, 1959"; of all bikes, how many; may be empty.
    document::Cell attention; ///< "2 overdue, 1 due", "nothing due", "sold".
};

/// All bikes first, then each in the garage's order.
[[nodiscard]] std::vector<BikeLine> bike_lines(const Garage& garage, const Date& today);

/// The lines as a model: the whole line as words for those who listen, its parts for the painter.
class BikeListModel final : public QAbstractListModel {
public:
    static constexpr int name_role = Qt::UserRole;
    static constexpr int made_role = Qt::UserRole + 1;
    static constexpr int attention_role = Qt::UserRole + 2;
    static constexpr int severity_role = Qt::UserRole + 3; ///< document::Severity as an integer.

    explicit BikeListModel(QObject* parent = nullptr)
        : QAbstractListModel(parent) {}
    void show(std::vector<BikeLine> lines);
    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;

private:
    std::vector<BikeLine> lines_;
};

/// The list at the side, moved through with the arrow keys.
class BikeList final : public QListView {
public:
    explicit BikeList(QWidget* parent = nullptr);
    void show_lines(std::vector<BikeLine> lines, int chosen_row);
    void on_chosen(std::function<void(int)> told);

private:
    BikeListModel* lines_;
};

} // namespace sumpbook::window
