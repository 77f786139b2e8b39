#pragma once

#include <QTimer>
#include <QWidget>

#include "catalogue/query.h"
#include "catalogue/sort_key.h"
#include "desktop/theme/theme.h"

class QLabel;

namespace pantile::desktop {

class ChoiceBox;
class PlainLabel;
class SearchField;

/// The search field with its errors in place, and the order of what is found.
class SearchBar : public QWidget {
    Q_OBJECT

public:
    /// The theme must outlive it.
    SearchBar(const Theme& theme, QWidget* parent);

    /// What is asked for now; the last query that could be read, if this one cannot.
    const catalogue::Query& query() const { return m_query; }

    catalogue::SortKey sortKey() const;

    bool isEmpty() const;

    /// As it was typed.
    QString text() const;

    /// The order in the words of the query language.
    std::string sortName() const;

    /// Asks for this, as if it was typed. An order that is not offered stays as it is.
    void ask(const QString& query, const QString& sort);

    /// Words to complete what is being typed from.
    void setNames(const QStringList& tags, const QStringList& shelves);
    void focusField();
    void clear();

    /// Takes a widget into the line of the field.
    void addToLine(QWidget* widget);

Q_SIGNALS:
    /// Query or order are others; a short pause in typing later.
    void asked();

    /// The person wants to go on to what was found.
    void left();

private:
    void makeErrorPart(const Theme& theme);
    void readField();
    void showError(const core::Error& error);

    SearchField* m_field;
    ChoiceBox* m_order;
    QWidget* m_errorPart = nullptr;
    PlainLabel* m_message = nullptr;
    QLabel* m_place = nullptr;
    QTimer m_pause;
    catalogue::Query m_query;
};

}  // namespace pantile::desktop
