#include "desktop/views/share_bench.h"

#include <array>

#include <QAction>
#include <QClipboard>
#include <QComboBox>
#include <QFontDatabase>
#include <QGridLayout>
#include <QGuiApplication>
#include <QLabel>
#include <QListWidget>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QSpinBox>
#include <QVBoxLayout>

#include "desktop/texts.h"
#include "desktop/theme/apply_theme.h"
#include "desktop/views/action_button.h"
#include "desktop/views/choice_box.h"
#include "desktop/views/heading.h"
#include "desktop/views/plain_label.h"
#include "desktop/views/tick_box.h"

namespace pantile::desktop {

using tasks::PostSyntax;

namespace {

constexpr int kUsualLimit = 2000;  // What many chats allow: common practice, no source.
constexpr int kMostLimit = 1000000;
constexpr int kListRows = 4;

struct SyntaxChoice {
    const char* words;
    std::optional<PostSyntax> syntax;
};

const std::array<SyntaxChoice, 5> kSyntaxes = {{
    {QT_TRANSLATE_NOOP("ShareBench", "the code alone"), {}},
    {QT_TRANSLATE_NOOP("ShareBench", "a chat"), PostSyntax::Chat},
    {QT_TRANSLATE_NOOP("ShareBench", "Markdown"), PostSyntax::Markdown},
    {QT_TRANSLATE_NOOP("ShareBench", "BBCode"), PostSyntax::Bbcode},
    {QT_TRANSLATE_NOOP("ShareBench", "plain text"), PostSyntax::Plain},
}};

}  // namespace

ShareBench::ShareBench(AppContext& context, Actions& actions, const ChosenTextures& chosen,
                       QWidget* parent)
    : QWidget(parent),
      m_context(context),
      m_actions(actions),
      m_chosen(chosen),
      m_words(new PlainLabel(this)),
      m_syntax(new ChoiceBox(context.theme, this)),
      m_limit(new QSpinBox(this)),
      m_asSet(new TickBox(tr("All in one &code"), context.theme, this)),
      m_withoutPalette(new TickBox(tr("Leave the &palette out"), context.theme, this)),
      m_list(new QListWidget(this)),
      m_post(new QPlainTextEdit(this)),
      m_costs(new PlainLabel(this)),
      m_writing(context.jobs) {
    setObjectName(QStringLiteral("shareBench"));
    m_words->setObjectName(QStringLiteral("chosenWords"));
    m_words->setForegroundRole(QPalette::PlaceholderText);
    m_list->setObjectName(QStringLiteral("postList"));
    m_list->setAccessibleName(tr("Posts"));
    m_list->setUniformItemSizes(true);
    m_list->setFixedHeight(kListRows * (m_list->fontMetrics().height() + kGap));
    m_post->setObjectName(QStringLiteral("post"));
    m_post->setAccessibleName(tr("The post as it will be pasted"));
    m_post->setReadOnly(true);
    m_post->setTabChangesFocus(true);
    m_post->setFont(QFontDatabase::systemFont(QFontDatabase::FixedFont));
    m_costs->setObjectName(QStringLiteral("postCosts"));
    m_costs->setFont(figureFont());
    m_costs->setForegroundRole(QPalette::PlaceholderText);

    QLabel* const title = makeHeading(tr("Share"), this);
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins(2 * kGap, 2 * kGap, 2 * kGap, 2 * kGap);
    layout->setSpacing(kGap);
    layout->addWidget(title);
    layout->addWidget(m_words);
    layout->addWidget(makeOptions());
    layout->addWidget(m_list);
    layout->addWidget(m_post, 1);
    layout->addWidget(m_costs);
    layout->addWidget(makeButtons());

    connect(&m_chosen, &ChosenTextures::changed, this, &ShareBench::ask);
    connect(m_list, &QListWidget::currentRowChanged, this, &ShareBench::showPost);
    ask();
}

QWidget* ShareBench::makeOptions() {
    for (const SyntaxChoice& choice : kSyntaxes) m_syntax->addItem(tr(choice.words));
    m_syntax->setObjectName(QStringLiteral("postSyntax"));
    m_syntax->setAccessibleName(tr("Where it will be pasted"));
    m_limit->setObjectName(QStringLiteral("postLimit"));
    m_limit->setAccessibleName(tr("Characters of a post at most"));
    // The value below the least one that a post can keep stands for no limit.
    m_limit->setRange(static_cast<int>(tasks::kLeastPostLimit) - 1, kMostLimit);
    m_limit->setSpecialValueText(tr("any length"));
    m_limit->setSuffix(tr(" characters"));
    m_limit->setSingleStep(100);
    m_limit->setValue(kUsualLimit);
    m_limit->setKeyboardTracking(false);
    m_limit->setButtonSymbols(QAbstractSpinBox::NoButtons);  // Typed, or by arrow keys.
    m_asSet->setObjectName(QStringLiteral("asSet"));
    m_withoutPalette->setObjectName(QStringLiteral("withoutPalette"));
    m_withoutPalette->setToolTip(
        tr("Shorter, for those who have the palette in their library; others cannot read it."));

    auto* const options = new QWidget(this);
    auto* const syntaxLabel = new QLabel(tr("&For"), options);
    syntaxLabel->setBuddy(m_syntax);
    auto* const limitLabel = new QLabel(tr("Posts of at &most"), options);
    limitLabel->setBuddy(m_limit);
    auto* const layout = new QGridLayout(options);
    layout->setContentsMargins({});
    layout->setHorizontalSpacing(kGap);
    layout->setVerticalSpacing(kGap);
    layout->addWidget(syntaxLabel, 0, 0);
    layout->addWidget(m_syntax, 0, 1);
    layout->addWidget(limitLabel, 1, 0);
    layout->addWidget(m_limit, 1, 1);
    layout->addWidget(m_asSet, 2, 1);
    layout->addWidget(m_withoutPalette, 3, 1);
    layout->setColumnStretch(2, 1);

    connect(m_syntax, &QComboBox::currentIndexChanged, this, &ShareBench::ask);
    connect(m_limit, &QSpinBox::valueChanged, this, &ShareBench::ask);
    connect(m_asSet, &QAbstractButton::toggled, this, &ShareBench::ask);
    connect(m_withoutPalette, &QAbstractButton::toggled, this, &ShareBench::ask);
    return options;
}

QWidget* ShareBench::makeButtons() {
    auto* const buttons = new QWidget(this);
    auto* const layout = new QHBoxLayout(buttons);
    layout->setContentsMargins({});
    layout->setSpacing(kGap);
    layout->addWidget(makeNextButton(m_actions[ActionId::CopyPost], tr("Copy this post"), this));
    layout->addWidget(makeActionButton(m_actions[ActionId::CopyAllPosts], tr("Copy all"), this));
    layout->addStretch();
    connect(&m_actions[ActionId::CopyPost], &QAction::triggered, this, [this] {
        const int row = m_list->currentRow();
        if (row >= 0) copy({m_posts[static_cast<std::size_t>(row)].text});
    });
    connect(&m_actions[ActionId::CopyAllPosts], &QAction::triggered, this, [this] {
        QStringList texts;
        for (const Post& post : m_posts) texts.append(post.text);
        copy(texts);
    });
    return buttons;
}

void ShareBench::stopAndWait() {
    m_writing.stopAndWait();
}

void ShareBench::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    if (m_isStale) ask();
}

void ShareBench::ask() {
    m_words->setText(m_chosen.words());
    const std::vector<core::TextureId>& ids = m_chosen.ids();
    m_asSet->setEnabled(ids.size() > 1);
    m_isStale = !isVisible();
    if (ids.empty()) {
        m_writing.stop();
        return showNothing(tr("Choose textures in the library: their codes stand here then."));
    }
    if (ids.size() > kMostShared) {
        m_writing.stop();
        return showNothing(tr("These are too many to paste. Choose at most %1 textures, or copy "
                              "their codes in the library.")
                               .arg(kMostShared));
    }
    if (m_isStale) return;
    PostsRequest request{m_context.libraryPath, ids, {}, m_asSet->isChecked()};
    request.options.posts.syntax =
        kSyntaxes.at(static_cast<std::size_t>(std::max(m_syntax->currentIndex(), 0))).syntax;
    if (m_limit->value() > m_limit->minimum())
        request.options.posts.limit = static_cast<std::size_t>(m_limit->value());
    if (m_withoutPalette->isChecked())
        request.options.code.palette = codec::PaletteForm::ByFingerprint;
    m_writing.start(
        [request](const core::Progress& progress) { return makePosts(request, progress); },
        [this](const core::Result<Posts>& posts) { showPosts(posts); });
}

void ShareBench::showPosts(const core::Result<Posts>& posts) {
    if (m_chosen.ids().empty()) return;
    if (!posts) return showNothing(shownError(posts.error()));
    m_posts = posts->posts;
    {
        const QSignalBlocker quiet(m_list);
        m_list->clear();
        for (const Post& post : m_posts) m_list->addItem(post.words);
        m_list->setCurrentRow(0);
    }
    const bool several = m_posts.size() > 1;
    m_list->setVisible(several);
    m_actions[ActionId::CopyPost].setEnabled(true);
    m_actions[ActionId::CopyAllPosts].setEnabled(several);
    m_costs->setText(
        QStringLiteral("%1 · %2 · %3")
            .arg(counted("ShareBench", "%1 post", "%1 posts", std::ssize(m_posts)),
                 counted("ShareBench", "%1 character", "%1 characters", posts->characters),
                 shownBytes(posts->bytes)));
    showPost(0);
}

void ShareBench::showPost(int number) {
    if (number < 0 || number >= std::ssize(m_posts)) return;
    m_post->setPlainText(m_posts[static_cast<std::size_t>(number)].text);
}

void ShareBench::showNothing(const QString& why) {
    m_posts.clear();
    m_list->clear();
    m_list->hide();
    m_post->clear();
    m_post->setPlaceholderText(why);
    m_costs->clear();
    m_actions[ActionId::CopyPost].setEnabled(false);
    m_actions[ActionId::CopyAllPosts].setEnabled(false);
}

void ShareBench::copy(const QStringList& texts) {
    const QString text = texts.join(QStringLiteral("\n\n"));
    QGuiApplication::clipboard()->setText(text);
    Q_EMIT copied(static_cast<int>(texts.size()), text.size());
}

}  // namespace pantile::desktop
