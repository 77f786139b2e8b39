#pragma once

#include <QWidget>

namespace pantile::desktop {

class PlainLabel;

/// A line that says one thing: what, quietly, and its value, in a column of its own.
class FactLine : public QWidget {
    Q_OBJECT

public:
    /// `name` is the value's, for tests; the line is called "fact_" and the name.
    FactLine(const char* name, const QString& label, QWidget* parent);

    /// An empty value hides the line.
    void setValue(const QString& value);

private:
    PlainLabel* m_value;
};

}  // namespace pantile::desktop
