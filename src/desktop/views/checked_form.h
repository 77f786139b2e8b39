#pragma once

#include <map>

#include <QSpinBox>
#include <QWidget>

#include "core/result.h"
#include "desktop/theme/theme.h"

class QGridLayout;
class QLineEdit;

namespace pantile::desktop {

class ChoiceBox;
class Mark;
class PlainLabel;
class TickBox;

/// A whole number that may be typed out of its range, so that what is wrong can be said beside it;
/// the arrow keys stay within.
class NumberField : public QSpinBox {
    Q_OBJECT

public:
    NumberField(int least, int most, QWidget* parent);

    /// Errors: as core::checkRange.
    core::Result<void> check(std::string_view what) const;

protected:
    StepEnabled stepEnabled() const override;
    void wheelEvent(QWheelEvent* event) override;

private:
    int m_least;
    int m_most;
};

/// Fields below one another, each with room for what is wrong with it.
class CheckedForm : public QWidget {
    Q_OBJECT

public:
    /// The theme must outlive it.
    CheckedForm(const Theme& theme, QWidget* parent);

    /// Of those that are shown now.
    bool hasErrors() const;

Q_SIGNALS:
    void changed();

protected:
    /// Units: `unit` is written behind the number.
    struct NumberRange {
        int least;
        int most;
        QString unit;
    };

    void addHeading(const QString& words);
    QLineEdit* addLine(const char* name, const QString& label);
    NumberField* addNumber(const char* name, const QString& label, const NumberRange& range);

    /// Two numbers in one row, with words between them.
    std::pair<NumberField*, NumberField*> addPair(const char* name, const QString& label,
                                                  const NumberRange& range, const QString& between);
    ChoiceBox* addChoice(const char* name, const QString& label);
    TickBox* addTick(const char* name, const QString& words);
    void addWidget(const QString& label, QWidget* widget);

    /// Shows the error below the field, or that there is none.
    void setError(QWidget* field, const core::Result<void>& checked);
    void tellChanged();

    const Theme& theme() const { return m_theme; }

    /// While it lives, `changed` is not told.
    class Silence {
    public:
        explicit Silence(CheckedForm& form) : m_form(form) { ++m_form.m_silences; }

        ~Silence() { --m_form.m_silences; }

        Silence(const Silence&) = delete;
        Silence& operator=(const Silence&) = delete;

    private:
        CheckedForm& m_form;
    };

private:
    struct ErrorRow {
        QWidget* row;
        PlainLabel* words;
    };

    NumberField* makeNumber(const QString& name, const QString& label, const NumberRange& range,
                            QWidget* parent);
    void addErrorRow(QWidget* field);

    const Theme& m_theme;
    QGridLayout* m_grid;
    std::map<QWidget*, ErrorRow> m_errors;
    int m_silences = 0;
};

}  // namespace pantile::desktop
