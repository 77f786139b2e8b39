#include "desktop/dialogs/words_dialog.h"

#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QRegularExpression>

#include "core/texture.h"
#include "desktop/texts.h"
#include "desktop/theme/apply_theme.h"
#include "desktop/views/choice_box.h"
#include "desktop/views/plain_label.h"

namespace pantile::desktop {

using core::Result;

namespace {

constexpr int kWordsDialogWidth = 480;

// A field that nobody typed in leaves things as they are, also where it is empty.
std::optional<std::string> typedIn(const QLineEdit* line) {
    if (!line->isModified()) return std::nullopt;
    return line->text().trimmed().toStdString();
}

std::vector<std::string> tagsIn(const QLineEdit* line) {
    static const QRegularExpression kBetween(QStringLiteral("[\\s,]+"));
    std::vector<std::string> tags;
    for (const QString& word : line->text().split(kBetween, Qt::SkipEmptyParts))
        tags.push_back(word.toStdString());
    return tags;
}

}  // namespace

bool WordsChange::isEmpty() const {
    const bool hasText =
        patch.title || patch.author || patch.licence || patch.source || patch.note || patch.stars;
    return !hasText && add.empty() && drop.empty();
}

WordsDialog::WordsDialog(std::int64_t count, const catalogue::TextureRow* row, const Theme& theme,
                         QWidget* parent)
    : QDialog(parent), m_isOne(row != nullptr), m_grid(new QGridLayout(this)) {
    setObjectName(QStringLiteral("wordsDialog"));
    setWindowTitle(counted("WordsDialog", "Words of %1 Texture", "Words of %1 Textures", count));
    setAttribute(Qt::WA_DeleteOnClose);
    m_grid->setContentsMargins(2 * kGap, 2 * kGap, 2 * kGap, 2 * kGap);
    m_grid->setHorizontalSpacing(kGap);
    m_grid->setVerticalSpacing(kGap);
    m_grid->setColumnStretch(1, 1);
    const catalogue::TextureRow now = row != nullptr ? *row : catalogue::TextureRow{};
    m_title = addLine("wordsTitle", tr("Title"), now.title);
    m_author = addLine("wordsAuthor", tr("Author"), now.author);
    m_licence = addLine("wordsLicence", tr("Licence"), now.licence);
    m_source = addLine("wordsSource", tr("Source"), now.source);
    m_note = new QPlainTextEdit(this);
    m_note->setObjectName(QStringLiteral("wordsNote"));
    m_note->setAccessibleName(tr("Note"));
    m_note->setTabChangesFocus(true);
    m_note->setPlainText(fromUtf8(now.note));
    m_note->document()->setModified(false);
    m_note->setMinimumHeight(5 * kGap);
    m_note->setMaximumHeight(9 * kGap);
    addField(tr("Note"), m_note);
    m_stars = new ChoiceBox(theme, this);
    m_stars->setObjectName(QStringLiteral("wordsStars"));
    m_stars->setAccessibleName(tr("Stars"));
    m_stars->addItem(tr("As they are"));
    m_stars->addItem(tr("None"));
    for (int i = 1; i <= catalogue::kMostStars; ++i) m_stars->addItem(shownStars(i));
    addField(tr("Stars"), m_stars);
    m_add = addLine("wordsAdd", tr("Add tags"), {});
    m_drop = addLine("wordsDrop", tr("Take off"), {});
    m_add->setPlaceholderText(tr("kelp wet"));
    m_drop->setPlaceholderText(tr("tags, with blanks between"));
    m_drop->setAccessibleName(tr("Take tags off"));

    m_error = new PlainLabel(this);
    m_error->setObjectName(QStringLiteral("wordsError"));
    m_error->hide();
    m_grid->addWidget(m_error, m_grid->rowCount(), 0, 1, 2);
    auto* const cancel = new QPushButton(tr("Cancel"), this);
    m_accept = new QPushButton(tr("Change"), this);
    m_accept->setObjectName(QStringLiteral("wordsChange"));
    m_accept->setProperty("next", true);
    m_accept->setDefault(true);
    m_accept->setEnabled(false);
    auto* const buttons = new QHBoxLayout;
    buttons->setSpacing(kGap);
    buttons->addStretch();
    buttons->addWidget(cancel);
    buttons->addWidget(m_accept);
    m_grid->addLayout(buttons, m_grid->rowCount(), 0, 1, 2);
    connect(cancel, &QPushButton::clicked, this, &QDialog::reject);
    connect(m_accept, &QPushButton::clicked, this, &QDialog::accept);
    connect(m_stars, &QComboBox::currentIndexChanged, this, &WordsDialog::check);
    connect(m_note, &QPlainTextEdit::textChanged, this, &WordsDialog::check);
    resize(QSize(kWordsDialogWidth, sizeHint().height())
               .boundedTo(parent->window()->size() - QSize(2 * kGap, 2 * kGap)));
}

QLineEdit* WordsDialog::addLine(const char* name, const QString& label, const std::string& now) {
    auto* const line = new QLineEdit(fromUtf8(now), this);
    line->setObjectName(QLatin1String(name));
    line->setAccessibleName(label);
    if (!m_isOne) line->setPlaceholderText(tr("as it is in each"));
    addField(label, line);
    connect(line, &QLineEdit::textEdited, this, [this, line] {
        if (line != m_add && line != m_drop) line->setPlaceholderText(tr("will be empty"));
        check();
    });
    return line;
}

void WordsDialog::addField(const QString& label, QWidget* field) {
    const int row = m_grid->rowCount();
    auto* const words = new QLabel(label, this);
    words->setBuddy(field);
    m_grid->addWidget(words, row, 0);
    m_grid->addWidget(field, row, 1);
}

Result<WordsChange> WordsDialog::change() const {
    WordsChange change;
    change.patch.title = typedIn(m_title);
    change.patch.author = typedIn(m_author);
    change.patch.licence = typedIn(m_licence);
    change.patch.source = typedIn(m_source);
    if (m_note->document()->isModified()) change.patch.note = m_note->toPlainText().toStdString();
    if (m_stars->currentIndex() > 0) change.patch.stars = m_stars->currentIndex() - 1;
    change.add = tagsIn(m_add);
    change.drop = tagsIn(m_drop);
    core::TextureText text;
    text.title = change.patch.title.value_or("");
    text.author = change.patch.author.value_or("");
    text.licence = change.patch.licence.value_or("");
    text.source = change.patch.source.value_or("");
    text.note = change.patch.note.value_or("");
    text.tags = change.add;
    PANTILE_RETURN_IF_ERROR(core::checkTextureText(text));
    for (const std::string& tag : change.drop) PANTILE_RETURN_IF_ERROR(core::checkTag(tag));
    return change;
}

void WordsDialog::check() {
    const auto read = change();
    m_error->setVisible(!read);
    if (!read) m_error->setText(shownError(read.error()));
    m_accept->setEnabled(read && !read->isEmpty());
}

}  // namespace pantile::desktop
