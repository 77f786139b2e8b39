#include "desktop/views/read_bench.h"

#include <algorithm>

#include <QAction>
#include <QFontDatabase>
#include <QLabel>
#include <QListWidget>
#include <QPixmap>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QSplitter>
#include <QTextCursor>
#include <QVBoxLayout>

#include "desktop/texts.h"
#include "desktop/theme/apply_theme.h"
#include "desktop/views/action_button.h"
#include "desktop/views/heading.h"
#include "desktop/views/mark.h"
#include "desktop/views/plain_label.h"

namespace pantile::desktop {

namespace {

constexpr int kReadPauseMs = 150;
constexpr int kPictureSide = 40;
constexpr std::size_t kMostMarks = 2000;  // More are not found by eye, and cost the editor time.

// Told apart by the line below them too, not by colour alone.
QTextCharFormat markFormat(codec::CodeMark mark, const Theme& theme) {
    QTextCharFormat format;
    format.setBackground(toQColor(theme.selection));
    format.setForeground(toQColor(theme.text));
    switch (mark) {
        case codec::CodeMark::Read:
            break;
        case codec::CodeMark::Repaired:
            format.setUnderlineStyle(QTextCharFormat::DashUnderline);
            break;
        case codec::CodeMark::Damaged:
            format.setBackground(toQColor(theme.caution));
            format.setForeground(toQColor(theme.onCaution));
            format.setUnderlineStyle(QTextCharFormat::WaveUnderline);
            break;
    }
    return format;
}

}  // namespace

ReadBench::ReadBench(AppContext& context, Actions& actions, QWidget* parent)
    : QWidget(parent),
      m_context(context),
      m_add(actions[ActionId::AddRead]),
      m_text(new QPlainTextEdit(this)),
      m_counts(new PlainLabel(this)),
      m_list(new QListWidget(this)),
      m_reading(context.jobs) {
    setObjectName(QStringLiteral("readBench"));
    m_text->setObjectName(QStringLiteral("pastedText"));
    m_text->setAccessibleName(tr("Text to read"));
    m_text->setPlaceholderText(
        tr("Paste a text with codes in it: a mail, a chat, a page of a forum."));
    m_text->setFont(QFontDatabase::systemFont(QFontDatabase::FixedFont));
    m_text->setTabChangesFocus(true);
    m_counts->setObjectName(QStringLiteral("readCounts"));
    m_counts->setForegroundRole(QPalette::PlaceholderText);
    m_list->setObjectName(QStringLiteral("readList"));
    m_list->setAccessibleName(tr("What the text holds"));
    m_list->setIconSize({kPictureSide, kPictureSide});
    m_list->setWordWrap(true);
    m_list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    makeLayout(actions);

    m_pause.setSingleShot(true);
    m_pause.setInterval(kReadPauseMs);
    connect(&m_pause, &QTimer::timeout, this, &ReadBench::read);
    connect(m_text, &QPlainTextEdit::textChanged, &m_pause, qOverload<>(&QTimer::start));
    connect(m_list, &QListWidget::currentRowChanged, this, &ReadBench::goTo);
    connect(&m_add, &QAction::triggered, this, [this] { Q_EMIT addAsked(m_text->toPlainText()); });
    showItems({});
}

void ReadBench::makeLayout(Actions& actions) {
    QLabel* const title = makeHeading(tr("Read"), this);
    auto* const clear = new QPushButton(tr("Clear"), this);
    clear->setObjectName(QStringLiteral("clearText"));
    connect(clear, &QPushButton::clicked, m_text, &QPlainTextEdit::clear);

    auto* const both = new QSplitter(Qt::Vertical, this);
    both->setHandleWidth(1);
    both->setChildrenCollapsible(false);
    both->addWidget(m_text);
    both->addWidget(m_list);
    both->setStretchFactor(0, 3);
    both->setStretchFactor(1, 2);
    auto* const buttons = new QHBoxLayout;
    buttons->setSpacing(kGap);
    buttons->addWidget(makeActionButton(actions[ActionId::AddRead], tr("Add to library"), this));
    buttons->addWidget(clear);
    buttons->addStretch();
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins(2 * kGap, 2 * kGap, 2 * kGap, 2 * kGap);
    layout->setSpacing(kGap);
    layout->addWidget(title);
    layout->addWidget(m_counts);
    layout->addWidget(both, 1);
    layout->addLayout(buttons);
}

void ReadBench::stopAndWait() {
    m_reading.stopAndWait();
}

void ReadBench::renew() {
    if (!m_text->document()->isEmpty()) read();
}

void ReadBench::read() {
    const auto side = static_cast<int>(kPictureSide * devicePixelRatioF());
    const ReadTextRequest request{m_context.libraryPath, m_text->toPlainText(), side,
                                  hatchOf(m_context.theme)};
    m_reading.start(
        [request](const core::Progress& progress) { return readText(request, progress); },
        [this](const core::Result<ReadTextAnswer>& answer) { showAnswer(answer); });
}

void ReadBench::showAnswer(const core::Result<ReadTextAnswer>& answer) {
    if (!answer) {
        showItems({});
        m_counts->setText(shownError(answer.error()));
        return;
    }
    showItems(*answer);
    markText(answer->marks);
}

void ReadBench::showItems(const ReadTextAnswer& answer) {
    const QSignalBlocker quiet(m_list);
    m_list->clear();
    m_places.clear();
    const QImage caution =
        markImage(MarkKind::Caution, m_context.theme, kPictureSide, devicePixelRatioF());
    for (const ReadItem& item : answer.items) {
        QImage picture = item.isDamaged() ? caution : item.picture;
        picture.setDevicePixelRatio(devicePixelRatioF());
        m_list->addItem(new QListWidgetItem(QIcon(QPixmap::fromImage(picture)), item.words));
        m_places.push_back(item.place);
    }
    m_list->setVisible(!answer.items.empty());
    m_add.setEnabled(answer.fresh > 0);
    if (answer.items.empty()) {
        m_counts->setText(m_text->document()->isEmpty() ? tr("Nothing is stored while you read.")
                                                        : tr("No code stands in this text."));
        return;
    }
    QStringList words = {counted("ReadBench", "%1 texture", "%1 textures", answer.read),
                         tr("%1 new").arg(answer.fresh)};
    if (answer.damaged > 0) words.append(tr("%1 damaged").arg(answer.damaged));
    m_counts->setText(words.join(QStringLiteral(" · ")));
}

void ReadBench::markText(const std::vector<TextMark>& marks) {
    QList<QTextEdit::ExtraSelection> selections;
    for (std::size_t i = 0; i < std::min(kMostMarks, marks.size()); ++i) {
        QTextEdit::ExtraSelection selection;
        selection.cursor = m_text->textCursor();
        selection.cursor.setPosition(marks[i].begin);
        selection.cursor.setPosition(marks[i].end, QTextCursor::KeepAnchor);
        selection.format = markFormat(marks[i].mark, m_context.theme);
        selections.append(selection);
    }
    m_text->setExtraSelections(selections);
}

void ReadBench::goTo(int row) {
    if (row < 0 || row >= std::ssize(m_places)) return;
    QTextCursor cursor = m_text->textCursor();
    cursor.setPosition(m_places[static_cast<std::size_t>(row)]);
    m_text->setTextCursor(cursor);
    m_text->centerCursor();
}

}  // namespace pantile::desktop
