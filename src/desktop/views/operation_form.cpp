#include "desktop/views/operation_form.h"

#include <algorithm>

#include <QComboBox>
#include <QCoreApplication>
#include <QGridLayout>
#include <QLabel>
#include <QPixmap>
#include <QPushButton>
#include <QSpinBox>
#include <QVBoxLayout>

#include "core/colour.h"
#include "desktop/texts.h"
#include "desktop/theme/apply_theme.h"
#include "desktop/views/choice_box.h"
#include "desktop/views/plain_label.h"

namespace pantile::desktop {

namespace {

QString operationWords(const char* words) {
    return QCoreApplication::translate("operations", words);
}

QPixmap colourSample(core::Rgb8 colour) {
    QPixmap sample(16, 16);
    sample.fill(toQColor(colour));
    return sample;
}

}  // namespace

OperationForm::OperationForm(const Theme& theme, QWidget* parent)
    : QWidget(parent),
      m_theme(theme),
      m_operations(new ChoiceBox(theme, this)),
      m_questions(new QWidget(this)),
      m_grid(new QGridLayout(m_questions)),
      m_error(new PlainLabel(this)),
      m_accept(new QPushButton(tr("Apply"), this)),
      m_leave(new QPushButton(tr("Leave"), this)) {
    setObjectName(QStringLiteral("operationForm"));
    m_operations->setObjectName(QStringLiteral("operations"));
    m_operations->setAccessibleName(tr("Operation on the whole texture"));
    m_operations->addItem(tr("Choose what to do"));
    for (const WholeOperation& each : wholeOperations())
        m_operations->addItem(operationWords(each.words));
    m_error->setObjectName(QStringLiteral("operationError"));
    m_accept->setObjectName(QStringLiteral("acceptOperation"));
    m_leave->setObjectName(QStringLiteral("leaveOperation"));
    m_grid->setContentsMargins({});
    m_grid->setHorizontalSpacing(kGap);
    m_grid->setVerticalSpacing(kGap);
    m_grid->setColumnStretch(1, 1);

    auto* const buttons = new QHBoxLayout;
    buttons->setSpacing(kGap);
    buttons->addWidget(m_accept);
    buttons->addWidget(m_leave);
    buttons->addStretch();
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins({});
    layout->setSpacing(kGap);
    layout->addWidget(m_operations);
    layout->addWidget(m_questions);
    layout->addWidget(m_error);
    layout->addLayout(buttons);

    connect(m_operations, &QComboBox::currentIndexChanged, this, [this] {
        showQuestions();
        tellChanged();
    });
    connect(m_accept, &QPushButton::clicked, this, &OperationForm::accepted);
    connect(m_leave, &QPushButton::clicked, this, &OperationForm::leave);
    showQuestions();
}

const WholeOperation* OperationForm::chosen() const {
    const int row = m_operations->currentIndex() - 1;
    return row < 0 ? nullptr : &wholeOperations()[static_cast<std::size_t>(row)];
}

void OperationForm::setColours(const core::Palette& palette, int picked, int other) {
    m_picked = picked;
    m_other = other;
    if (m_palette == palette) return;
    m_palette = palette;
    for (QComboBox* const box : m_colourBoxes) {
        const QSignalBlocker quiet(box);
        const int index = std::min(box->currentIndex(), palette.size() - 1);
        box->clear();
        fillWithColours(*box);
        box->setCurrentIndex(index);
    }
}

void OperationForm::setPaletteNames(const std::vector<std::string>& names) {
    m_paletteNames = names;
}

std::optional<OperationForm::Asked> OperationForm::asked() const {
    const WholeOperation* const operation = chosen();
    if (operation == nullptr) return std::nullopt;
    Answers answers;
    for (std::size_t i = 0; i < m_answers.size(); ++i) {
        const int answer = m_answers[i]();
        answers.numbers.push_back(answer);
        const bool isName = operation->questions[i].kind == AnswerKind::Palette && answer >= 0;
        if (isName) answers.palette = m_paletteNames[static_cast<std::size_t>(answer)];
    }
    return Asked{operationWords(operation->words), operation->make(answers)};
}

void OperationForm::leave() {
    m_operations->setCurrentIndex(0);
}

void OperationForm::allow() {
    m_error->hide();
    m_accept->setEnabled(true);
}

void OperationForm::refuse(const QString& why) {
    m_error->setText(why);
    m_error->setAccessibleDescription(why);
    m_error->show();
    m_accept->setEnabled(false);
}

void OperationForm::tellChanged() {
    m_accept->setEnabled(false);
    m_error->hide();
    Q_EMIT changed();
}

void OperationForm::showQuestions() {
    qDeleteAll(m_questions->findChildren<QWidget*>(Qt::FindDirectChildrenOnly));
    m_answers.clear();
    m_colourBoxes.clear();
    const WholeOperation* const operation = chosen();
    for (QWidget* const part :
         {m_questions, static_cast<QWidget*>(m_accept), static_cast<QWidget*>(m_leave)})
        part->setVisible(operation != nullptr);
    m_error->hide();
    if (operation == nullptr) return;
    for (const Question& question : operation->questions) addQuestion(question);
}

void OperationForm::addQuestion(const Question& question) {
    const QString label = operationWords(question.words);
    if (question.kind == AnswerKind::Number) {
        addNumber(question, label);
    } else {
        addChoice(question, label);
    }
}

void OperationForm::addNumber(const Question& question, const QString& label) {
    auto* const box = new QSpinBox(m_questions);
    box->setRange(question.least, question.most);
    box->setValue(question.usual);
    box->setButtonSymbols(QAbstractSpinBox::NoButtons);  // Typed, or by arrow keys.
    addField(label, box);
    m_answers.emplace_back([box] { return box->value(); });
    connect(box, &QSpinBox::valueChanged, this, &OperationForm::tellChanged);
}

void OperationForm::addChoice(const Question& question, const QString& label) {
    auto* const box = new ChoiceBox(m_theme, m_questions);
    for (const char* const words : question.choices) box->addItem(operationWords(words));
    if (question.kind == AnswerKind::Colour) {
        fillWithColours(*box);
        box->setCurrentIndex(question.usual == 0 ? m_picked : m_other);
        m_colourBoxes.push_back(box);
    } else if (question.kind == AnswerKind::Palette) {
        for (const std::string& name : m_paletteNames) box->addItem(shownText(name));
    }
    addField(label, box);
    m_answers.emplace_back([box] { return box->currentIndex(); });
    connect(box, &QComboBox::currentIndexChanged, this, &OperationForm::tellChanged);
}

void OperationForm::addField(const QString& label, QWidget* field) {
    const auto row = static_cast<int>(m_answers.size());
    field->setObjectName(QStringLiteral("answer%1").arg(row));
    field->setAccessibleName(label);
    auto* const words = new QLabel(label, m_questions);
    m_grid->addWidget(words, row, 0);
    m_grid->addWidget(field, row, 1);
}

void OperationForm::fillWithColours(QComboBox& box) const {
    if (!m_palette) return;
    for (int i = 0; i < m_palette->size(); ++i) {
        const core::Rgb8 colour = m_palette->colours()[static_cast<std::size_t>(i)];
        if (m_palette->transparent() == i) {
            box.addItem(tr("%1: left unpainted").arg(i));
        } else {
            box.addItem(colourSample(colour),
                        QStringLiteral("%1: %2").arg(i).arg(fromUtf8(core::toHex(colour))));
        }
    }
}

}  // namespace pantile::desktop
