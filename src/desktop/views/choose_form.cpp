#include "desktop/views/choose_form.h"

#include <algorithm>

#include <QAction>
#include <QGridLayout>
#include <QLabel>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QSpinBox>
#include <QVBoxLayout>

#include "desktop/texts.h"
#include "desktop/theme/apply_theme.h"
#include "desktop/views/action_button.h"
#include "desktop/views/choice_box.h"
#include "desktop/views/plain_label.h"
#include "desktop/views/tick_box.h"

namespace pantile::desktop {

namespace {

constexpr int kMostMinutes = 24 * 60;
constexpr std::int64_t kMinuteMs = 60000;
constexpr int kMostLeftOutLines = 8;

QString leftOutLine(const LeftOutWords& left) {
    const QString line =
        ChooseForm::tr("%1 %2: %3.").arg(left.id.value).arg(left.title, left.reason);
    return left.change.isEmpty() ? line : line + QLatin1Char(' ') + left.change;
}

}  // namespace

ChooseForm::ChooseForm(const Theme& theme, Actions& actions, const ChosenTextures& chosen,
                       LoadWork& work, QWidget* parent)
    : QWidget(parent),
      m_actions(actions),
      m_chosen(chosen),
      m_work(work),
      m_from(new ChoiceBox(theme, this)),
      m_minutes(new QSpinBox(this)),
      m_keep(new TickBox(tr("&Keep what lies in the tray"), theme, this)),
      m_overSeveral(new TickBox(tr("&All of them, over several loads"), theme, this)),
      m_answer(new PlainLabel(this)),
      m_leftOut(new QPlainTextEdit(this)) {
    setObjectName(QStringLiteral("chooseForm"));
    makeLayout();
    connect(&m_chosen, &ChosenTextures::changed, this, &ChooseForm::showChosen);
    connect(&m_work, &LoadWork::chosen, this, &ChooseForm::showAnswer);
    connect(m_minutes, &QSpinBox::valueChanged, this, [this](int minutes) {
        m_work.setTimeLimit(minutes == 0 ? std::nullopt : std::optional(minutes * kMinuteMs));
    });
    connect(&m_actions[ActionId::ChooseForMe], &QAction::triggered, this, &ChooseForm::choose);
    showChosen();
}

void ChooseForm::makeLayout() {
    m_from->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    m_from->setMinimumContentsLength(12);  // The column is narrower than the longest name.
    m_from->setObjectName(QStringLiteral("chooseFrom"));
    m_from->setAccessibleName(tr("What to choose from"));
    m_from->addItem(QString());
    m_minutes->setObjectName(QStringLiteral("chooseMinutes"));
    m_minutes->setAccessibleName(tr("Drawing of all together at most"));
    m_minutes->setRange(0, kMostMinutes);
    m_minutes->setSpecialValueText(tr("any time"));
    m_minutes->setSuffix(tr(" min"));
    m_minutes->setButtonSymbols(QAbstractSpinBox::NoButtons);  // Typed, or by arrow keys.
    m_keep->setObjectName(QStringLiteral("chooseKeep"));
    m_overSeveral->setObjectName(QStringLiteral("chooseOverSeveral"));
    m_answer->setObjectName(QStringLiteral("chooseAnswer"));
    m_leftOut->setObjectName(QStringLiteral("leftOut"));
    m_leftOut->setAccessibleName(tr("Left out, and why"));
    m_leftOut->setReadOnly(true);
    m_leftOut->setTabChangesFocus(true);
    m_answer->hide();
    m_leftOut->hide();

    auto* const fromLabel = new QLabel(tr("F&rom"), this);
    fromLabel->setBuddy(m_from);
    auto* const minutesLabel = new QLabel(tr("Drawing at &most"), this);
    minutesLabel->setBuddy(m_minutes);
    auto* const fields = new QGridLayout;
    fields->setHorizontalSpacing(kGap);
    fields->setVerticalSpacing(kGap);
    fields->addWidget(fromLabel, 0, 0);
    fields->addWidget(m_from, 0, 1);
    fields->addWidget(minutesLabel, 1, 0);
    fields->addWidget(m_minutes, 1, 1);
    fields->setColumnStretch(1, 1);
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins({});
    layout->setSpacing(kGap);
    layout->addLayout(fields);
    layout->addWidget(m_keep);
    layout->addWidget(m_overSeveral);
    layout->addWidget(makeActionButton(m_actions[ActionId::ChooseForMe], tr("Choose for me"), this),
                      0, Qt::AlignLeft);
    layout->addWidget(m_answer);
    layout->addWidget(m_leftOut);
}

void ChooseForm::setShelves(const QStringList& names) {
    const QString before = m_from->currentData().toString();
    while (m_from->count() > 1) m_from->removeItem(m_from->count() - 1);
    for (const QString& name : names)
        m_from->addItem(tr("shelf %1").arg(shownText(name.toStdString())), name);
    const int again = before.isEmpty() ? 0 : m_from->findData(before);
    m_from->setCurrentIndex(std::max(again, 0));
}

void ChooseForm::showChosen() {
    const auto number = std::ssize(m_chosen.ids());
    m_from->setItemText(
        0, counted("ChooseForm", "%1 chosen in the library", "%1 chosen in the library", number));
}

void ChooseForm::choose() {
    ChooseRequest request;
    request.shelf = m_from->currentData().toString().toStdString();
    if (request.shelf.empty()) request.ids = m_chosen.ids();
    request.overSeveral = m_overSeveral->isChecked();
    if (m_keep->isChecked() && !request.overSeveral) {
        for (const catalogue::TextureRow& row : m_work.tray().slots())
            request.keep.push_back(row.id);
    }
    m_answer->hide();
    m_leftOut->hide();
    m_work.choose(std::move(request));
}

void ChooseForm::showAnswer(const ChooseAnswer& answer) {
    QStringList lines;
    for (const LeftOutWords& left : answer.leftOut) lines.append(leftOutLine(left));
    QString words = answer.words;
    if (!lines.isEmpty())
        words += QLatin1Char(' ') +
                 counted("ChooseForm",
                         "%1 is left out:", "%1 are left out:", std::ssize(answer.leftOut));
    m_answer->setText(words);
    m_answer->show();
    m_leftOut->setPlainText(lines.join(QLatin1Char('\n')));
    // Each takes about two lines of the column.
    const int shown = std::min(2 * static_cast<int>(lines.size()), kMostLeftOutLines);
    m_leftOut->setFixedHeight(shown * m_leftOut->fontMetrics().lineSpacing() + 2 * kGap);
    m_leftOut->setVisible(!lines.isEmpty());
}

}  // namespace pantile::desktop
