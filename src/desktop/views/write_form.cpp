#include "desktop/views/write_form.h"

#include <algorithm>
#include <array>

#include <QAction>
#include <QHBoxLayout>
#include <QLabel>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include "board/cautions.h"
#include "desktop/texts.h"
#include "desktop/theme/apply_theme.h"
#include "desktop/views/action_button.h"
#include "desktop/views/choice_box.h"
#include "desktop/views/notice_bar.h"
#include "desktop/views/plain_label.h"
#include "desktop/views/tick_box.h"
#include "desktop/views/wrapped_row.h"

namespace pantile::desktop {

using tasks::LoadForm;

namespace {

struct FormChoice {
    const char* words;
    LoadForm form;
};

const std::array<FormChoice, 4> kLoadForms = {{
    {QT_TRANSLATE_NOOP("WriteForm", "as the board's memory asks"), LoadForm::AsMemory},
    {QT_TRANSLATE_NOOP("WriteForm", "files for a memory card"), LoadForm::Card},
    {QT_TRANSLATE_NOOP("WriteForm", "a header for the board's program"), LoadForm::Header},
    {QT_TRANSLATE_NOOP("WriteForm", "both"), LoadForm::Both},
}};

constexpr int kMostWrittenLines = 10;

QLabel* boldLabel(const QString& words, QWidget* parent) {
    auto* const label = new QLabel(words, parent);
    QFont bold = label->font();
    bold.setBold(true);
    label->setFont(bold);
    return label;
}

}  // namespace

WriteForm::WriteForm(AppContext& context, Actions& actions, LoadWork& work, NoticeBar& notices,
                     QWidget* parent)
    : QWidget(parent),
      m_context(context),
      m_actions(actions),
      m_work(work),
      m_notices(notices),
      m_form(new ChoiceBox(context.theme, this)),
      m_replace(new TickBox(tr("&Replace files of the same name"), context.theme, this)),
      m_written(new QPlainTextEdit(this)),
      m_writing(context.jobs),
      m_reading(context.jobs) {
    setObjectName(QStringLiteral("writeForm"));
    makeLayout();
    connectActions();
    connect(&m_work, &LoadWork::contentsChanged, this, &WriteForm::enableActions);
    enableActions();
    renew();
}

void WriteForm::makeLayout() {
    m_form->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    m_form->setMinimumContentsLength(12);  // The column is narrower than the longest name.
    m_form->setObjectName(QStringLiteral("writeAs"));
    m_form->setAccessibleName(tr("Form of the load"));
    for (const FormChoice& each : kLoadForms) m_form->addItem(tr(each.words));
    m_replace->setObjectName(QStringLiteral("writeReplace"));
    m_written->setObjectName(QStringLiteral("written"));
    m_written->setAccessibleName(tr("What lies on the boards"));
    m_written->setReadOnly(true);
    m_written->setTabChangesFocus(true);

    auto* const asLabel = new QLabel(tr("&As"), this);
    asLabel->setBuddy(m_form);
    auto* const fields = new QHBoxLayout;
    fields->setSpacing(kGap);
    fields->addWidget(asLabel);
    fields->addWidget(m_form, 1);
    auto* const buttons = new WrappedRow(this);
    buttons->add(makeNextButton(m_actions[ActionId::WriteLoad], tr("Write load"), buttons));
    buttons->add(makeActionButton(m_actions[ActionId::PrintSlots], tr("Slot sheet"), buttons));
    buttons->add(makeActionButton(m_actions[ActionId::VerifyLoad], tr("Verify"), buttons));
    buttons->add(makeActionButton(m_actions[ActionId::Calibrate], tr("Calibrate"), buttons));
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins({});
    layout->setSpacing(kGap);
    layout->addLayout(fields);
    layout->addWidget(m_replace);
    layout->addWidget(buttons);
    layout->addWidget(boldLabel(fromUtf8(board::kCautionsHeading), this));
    for (const std::string_view caution : board::cautions()) {
        auto* const line = new PlainLabel(this);
        line->setText(fromUtf8(caution));
        layout->addWidget(line);
    }
    layout->addWidget(boldLabel(tr("What lies on the boards"), this));
    layout->addWidget(m_written);
}

void WriteForm::connectActions() {
    const auto on = [this](ActionId id, auto&& slot) {
        connect(&m_actions[id], &QAction::triggered, this, slot);
    };
    on(ActionId::WriteLoad, [this] { write(); });
    on(ActionId::VerifyLoad, [this] { verify(); });
    on(ActionId::PrintSlots, [this] { print(); });
}

void WriteForm::enableActions() {
    const bool hasSlots = !m_work.tray().slots().empty();
    m_actions[ActionId::WriteLoad].setEnabled(hasSlots);
    m_actions[ActionId::PrintSlots].setEnabled(hasSlots);
}

WriteRequest WriteForm::request(const QString& folder) const {
    WriteRequest request{m_context.libraryPath, m_work.tray().load(), folder.toStdString(), {}};
    const auto form = static_cast<std::size_t>(std::max(m_form->currentIndex(), 0));
    request.options.form = kLoadForms.at(form).form;
    request.options.ifExists =
        m_replace->isChecked() ? tasks::IfExists::Replace : tasks::IfExists::Refuse;
    return request;
}

void WriteForm::start(BackgroundJob<WriteAnswer>::Work work,
                      const std::function<void()>& whenDone) {
    m_writing.start(std::move(work), [this, whenDone](const core::Result<WriteAnswer>& answer) {
        showAnswer(answer);
        if (answer && whenDone) whenDone();
    });
}

void WriteForm::write() {
    const QString folder = m_context.prompts.pickFolderToWrite(window());
    if (folder.isEmpty()) return;
    start([request = request(folder)](
              const core::Progress& progress) { return writeLoad(request, progress); },
          [this] { Q_EMIT written(); });
}

void WriteForm::verify() {
    const QString file = m_context.prompts.pickWrittenLoad(window());
    if (file.isEmpty()) return;
    start([path = std::filesystem::path(file.toStdString())](const core::Progress& progress) {
        return verifyLoad(path, progress);
    });
}

void WriteForm::print() {
    const QString folder = m_context.prompts.pickFolderToWrite(window());
    if (folder.isEmpty()) return;
    start([request = request(folder)](const core::Progress& progress) {
        return printSheet(request, progress);
    });
}

void WriteForm::showAnswer(const core::Result<WriteAnswer>& answer) {
    if (answer) {
        m_notices.showNotice(
            {answer->isRight ? MarkKind::Done : MarkKind::Caution, answer->words, answer->lines});
        return;
    }
    QString words = shownError(answer.error());
    if (answer.error().kind == core::ErrorKind::AlreadyExists)
        words += QLatin1Char(' ') + tr("Or tick that files may be replaced.");
    m_notices.showNotice({MarkKind::Caution, words, {}});
}

void WriteForm::renew() {
    m_reading.start(
        [path = m_context.libraryPath](const core::Progress&) { return readWritten(path); },
        [this](const core::Result<QStringList>& lines) {
            const QStringList shown = lines ? *lines : QStringList(shownError(lines.error()));
            m_written->setPlainText(shown.isEmpty() ? tr("Nothing was written yet.")
                                                    : shown.join(QLatin1Char('\n')));
            const int rows = std::clamp(3 * static_cast<int>(shown.size()), 1, kMostWrittenLines);
            m_written->setFixedHeight(rows * m_written->fontMetrics().lineSpacing() + 2 * kGap);
        });
}

void WriteForm::finishAll() {
    m_writing.waitForDone();
    m_reading.stopAndWait();
}

}  // namespace pantile::desktop
