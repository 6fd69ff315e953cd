// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "reports/document/document.h"

#include <QScrollArea>

#include <vector>

class QVBoxLayout;

namespace sumpbook::window {

/// Shows a document the way the command line prints it: headings, sentences with mark and colour, tables,
/// labelled facts, and pictures that are drawn live, two side by side where there is room.
class DocumentView final : public QScrollArea {
public:
    explicit DocumentView(const QString& name, QWidget* parent = nullptr);

    /// Takes the place of what was shown, from its beginning.
    void show_document(document::Document document);
    [[nodiscard]] const document::Document& document() const { return document_; }

protected:
    void changeEvent(QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void build();
    void give_room(); ///< Tells the pictures how high they can be and still be seen whole.

    document::Document document_;
};

/// The widgets of a document one below the other, in a widget of their own.
[[nodiscard]] QWidget* document_widget(const document::Document& document);

} // namespace sumpbook::window
