#include "desktop/views/checked_form.h"

#include <algorithm>
#include <limits>

#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>
#include <QWheelEvent>

#include "core/range_check.h"
#include "desktop/texts.h"
#include "desktop/theme/apply_theme.h"
#include "desktop/views/choice_box.h"
#include "desktop/views/mark.h"
#include "desktop/views/plain_label.h"
#include "desktop/views/tick_box.h"

namespace pantile::desktop {

NumberField::NumberField(int least, int most, QWidget* parent)
    : QSpinBox(parent), m_least(least), m_most(most) {
    setRange(-99999, std::numeric_limits<int>::max());
    setButtonSymbols(QAbstractSpinBox::NoButtons);  // Typed, or by arrow keys.
    setFocusPolicy(Qt::StrongFocus);
    setToolTip(tr("%1 to %2").arg(least).arg(most));
}

core::Result<void> NumberField::check(std::string_view what) const {
    return core::checkRange(what, value(), m_least, m_most);
}

QAbstractSpinBox::StepEnabled NumberField::stepEnabled() const {
    StepEnabled steps = StepNone;
    if (value() < m_most) steps |= StepUpEnabled;
    if (value() > m_least) steps |= StepDownEnabled;
    return steps;
}

// Who scrolls past it changes nothing.
void NumberField::wheelEvent(QWheelEvent* event) {
    if (hasFocus()) {
        QSpinBox::wheelEvent(event);
    } else {
        event->ignore();
    }
}

CheckedForm::CheckedForm(const Theme& theme, QWidget* parent)
    : QWidget(parent), m_theme(theme), m_grid(new QGridLayout(this)) {
    m_grid->setContentsMargins(2 * kGap, 2 * kGap, 2 * kGap, 2 * kGap);
    m_grid->setHorizontalSpacing(2 * kGap);
    m_grid->setVerticalSpacing(kGap);
    m_grid->setColumnStretch(1, 1);
    m_grid->setAlignment(Qt::AlignTop);
}

bool CheckedForm::hasErrors() const {
    return std::ranges::any_of(
        m_errors, [](const auto& each) { return !each.second.words->text().isEmpty(); });
}

void CheckedForm::addHeading(const QString& words) {
    auto* const heading = new QLabel(words, this);
    QFont bold = heading->font();
    bold.setBold(true);
    heading->setFont(bold);
    const int row = m_grid->rowCount();
    m_grid->addWidget(heading, row, 0, 1, 2);
    heading->setContentsMargins(0, kGap, 0, 0);
}

void CheckedForm::addWidget(const QString& label, QWidget* widget) {
    const int row = m_grid->rowCount();
    if (label.isEmpty()) {
        m_grid->addWidget(widget, row, 0, 1, 2);
    } else {
        auto* const words = new QLabel(label, this);
        words->setBuddy(widget);
        m_grid->addWidget(words, row, 0);
        m_grid->addWidget(widget, row, 1);
    }
    addErrorRow(widget);
}

void CheckedForm::addErrorRow(QWidget* field) {
    auto* const row = new QWidget(this);
    auto* const words = new PlainLabel(row);
    words->setObjectName(field->objectName() + QStringLiteral("Error"));
    auto* const line = new QHBoxLayout(row);
    line->setContentsMargins({});
    line->setSpacing(kGap);
    line->addWidget(new Mark(MarkKind::Caution, m_theme, row), 0, Qt::AlignTop);
    line->addWidget(words, 1);
    m_grid->addWidget(row, m_grid->rowCount(), 0, 1, 2);
    row->hide();
    m_errors[field] = {row, words};
}

QLineEdit* CheckedForm::addLine(const char* name, const QString& label) {
    auto* const line = new QLineEdit(this);
    line->setObjectName(QLatin1String(name));
    line->setAccessibleName(label);
    addWidget(label, line);
    connect(line, &QLineEdit::textChanged, this, &CheckedForm::tellChanged);
    return line;
}

NumberField* CheckedForm::makeNumber(const QString& name, const QString& label,
                                     const NumberRange& range, QWidget* parent) {
    auto* const field = new NumberField(range.least, range.most, parent);
    field->setObjectName(name);
    field->setAccessibleName(label);
    field->setSuffix(range.unit);
    field->setMinimumWidth(9 * kGap);
    connect(field, &QSpinBox::valueChanged, this, &CheckedForm::tellChanged);
    return field;
}

NumberField* CheckedForm::addNumber(const char* name, const QString& label,
                                    const NumberRange& range) {
    NumberField* const field = makeNumber(QLatin1String(name), label, range, this);
    addWidget(label, field);
    return field;
}

std::pair<NumberField*, NumberField*> CheckedForm::addPair(const char* name, const QString& label,
                                                           const NumberRange& range,
                                                           const QString& between) {
    auto* const both = new QWidget(this);
    both->setObjectName(QLatin1String(name));
    const QString start = QLatin1String(name);
    NumberField* const first =
        makeNumber(start + QLatin1Char('1'), tr("%1, across").arg(label), range, both);
    NumberField* const second =
        makeNumber(start + QLatin1Char('2'), tr("%1, down").arg(label), range, both);
    auto* const line = new QHBoxLayout(both);
    line->setContentsMargins({});
    line->setSpacing(kGap);
    line->addWidget(first, 1);
    line->addWidget(new QLabel(between, both));
    line->addWidget(second, 1);
    both->setFocusProxy(first);
    addWidget(label, both);
    return {first, second};
}

ChoiceBox* CheckedForm::addChoice(const char* name, const QString& label) {
    auto* const box = new ChoiceBox(m_theme, this);
    box->setObjectName(QLatin1String(name));
    box->setAccessibleName(label);
    box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    box->setMinimumContentsLength(12);
    addWidget(label, box);
    connect(box, &QComboBox::currentIndexChanged, this, &CheckedForm::tellChanged);
    return box;
}

TickBox* CheckedForm::addTick(const char* name, const QString& words) {
    auto* const box = new TickBox(words, m_theme, this);
    box->setObjectName(QLatin1String(name));
    addWidget({}, box);
    connect(box, &QCheckBox::toggled, this, &CheckedForm::tellChanged);
    return box;
}

void CheckedForm::setError(QWidget* field, const core::Result<void>& checked) {
    const ErrorRow& error = m_errors.at(field);
    const QString words = checked ? QString() : shownError(checked.error());
    error.words->setText(words);
    error.row->setVisible(!words.isEmpty());
    field->setAccessibleDescription(words);
}

void CheckedForm::tellChanged() {
    if (m_silences == 0) Q_EMIT changed();
}

}  // namespace pantile::desktop
