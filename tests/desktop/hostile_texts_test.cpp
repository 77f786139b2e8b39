// Hostile words in the window, and through the ways out that need Qt's fonts or its readers: the
// printed page and Markdown. The other ways out are in tests/tasks and tests/cli.

#include "support/hostile_texts.h"

#include <cstdio>
#include <fstream>

#include <QTextBlock>
#include <QTextDocument>
#include <QTreeWidget>

#include "catalogue/shelves.h"
#include "catalogue/tags.h"
#include "core/text.h"
#include "desktop/texts.h"
#include "image_files/slot_sheet.h"
#include "open_window.h"
#include "tasks/code_posts.h"

namespace pantile::desktop {
namespace {

using tests::HostileText;

QString asSeenInToolTip(const QString& words) {
    if (!Qt::mightBeRichText(words)) return words;
    QTextDocument document;
    document.setHtml(words);
    return document.toPlainText();
}

TEST(HostileTexts, AToolTipShowsThemAsTheyAre) {
    for (const HostileText& hostile : tests::hostileTexts()) {
        const QString words = shownText(hostile.text);
        EXPECT_EQ(asSeenInToolTip(shownToolTip(words)), words) << hostile.name;
    }
}

// Qt's own reader of Markdown (CommonMark with what forums add: tables, bare addresses).
TEST(HostileTexts, MarkdownMakesNothingOfThem) {
    const std::vector<std::uint8_t> container(20, 1);
    const auto bare = tasks::codePosts(container, {}, {});
    ASSERT_TRUE(bare.has_value());
    for (const HostileText& hostile : tests::hostileTexts()) {
        SCOPED_TRACE(hostile.name);
        const tasks::Credit credit{hostile.text, hostile.text, hostile.text};
        for (const tasks::PostSyntax syntax :
             {tasks::PostSyntax::Markdown, tasks::PostSyntax::Chat}) {
            const auto posts = tasks::codePosts(container, credit, {syntax, std::nullopt});
            ASSERT_TRUE(posts.has_value());
            QTextDocument document;
            document.setMarkdown(QString::fromStdString(posts->front()));
            const QTextBlock words = document.begin();
            const QString expected = QStringLiteral("Texture ") +
                                     fromUtf8(tasks::creditWords(credit)) + QLatin1Char(':');
            EXPECT_EQ(words.text().remove(QChar(0x200B)), expected);
            for (auto part = words.begin(); part != words.end(); ++part) {
                const QTextCharFormat form = part.fragment().charFormat();
                EXPECT_FALSE(form.isAnchor() || form.isImageFormat() || form.fontItalic() ||
                             form.fontStrikeOut() || form.fontWeight() > QFont::Medium);
            }
            // Behind the words stands the code, a block for each line.
            std::string behind;
            for (QTextBlock line = words.next(); line.isValid(); line = line.next())
                behind += (behind.empty() ? "" : "\n") + line.text().toStdString();
            EXPECT_EQ(behind, bare->front());
        }
    }
}

// Poppler's pdftotext reads the page as a reader of PDF does.
TEST(HostileTexts, APrintedPageKeepsItsLines) {
    image_files::SlotSheet sheet;
    sheet.heading = "Load kelp";
    std::vector<std::string> whole;
    for (const HostileText& hostile : tests::hostileTexts()) {
        sheet.slots.push_back({core::Pixels{{1, 1}, {core::Rgba8{}}}, hostile.text, {"a fact"}});
        const bool isPlain = std::all_of(hostile.text.begin(), hostile.text.end(),
                                         [](char c) { return c >= ' ' && c < 127; });
        constexpr std::size_t kSurelyShown = 20;
        if (isPlain && hostile.text.size() <= kSurelyShown) whole.push_back(hostile.text);
    }
    const auto pdf = image_files::slotSheetPdf(sheet);
    ASSERT_TRUE(pdf.has_value());
    const tests::TemporaryFolder folder;
    const std::string file = (folder.path() / "page.pdf").string();
    std::ofstream(file, std::ios::binary)
        .write(reinterpret_cast<const char*>(pdf->data()), std::ssize(*pdf));
    FILE* const pipe = popen(("pdftotext -raw '" + file + "' - 2>&1").c_str(), "r");
    ASSERT_NE(pipe, nullptr);
    std::string text = "\n";
    for (int c = fgetc(pipe); c != EOF; c = fgetc(pipe)) text += static_cast<char>(c);
    EXPECT_EQ(pclose(pipe), 0) << text;
    EXPECT_GT(whole.size(), 20U);
    for (const std::string& title : whole)
        EXPECT_NE(text.find(title + "\n"), std::string::npos) << title << " is not in " << text;
    std::size_t facts = 0;
    for (std::size_t at = text.find("a fact\n"); at != std::string::npos;
         at = text.find("a fact\n", at + 1))
        ++facts;
    EXPECT_EQ(facts, sheet.slots.size());
}

TEST(HostileTexts, TheWindowShowsThemAsTheyAre) {
    tests::LibraryFolder folder;
    int seed = 0;
    for (const HostileText& hostile : tests::hostileTexts()) {
        const auto id = folder.add(tests::smallTexture(hostile.text, ++seed));
        const std::string shelf = core::cleanedText(hostile.text, {"shelf", 60});
        EXPECT_TRUE(catalogue::putOnShelf(folder.library(), std::vector{id}, shelf).has_value());
    }
    tests::OpenWindow open(folder);
    ASSERT_TRUE(tests::comes(
        [&] { return open.shown() == static_cast<int>(tests::hostileTexts().size()); }));
    const QAbstractItemModel& model = *open.grid().model();
    for (int row = 0; row < model.rowCount(); ++row) {
        const QModelIndex index = model.index(row, 0);
        const QString title = index.data().toString();
        EXPECT_TRUE(asSeenInToolTip(index.data(Qt::ToolTipRole).toString()).startsWith(title));
        open.grid().setCurrentIndex(index);
        EXPECT_TRUE(tests::comes([&] { return open.words("detailTitle") == title; }))
            << title.toStdString();
    }
    // A label that is not told takes what looks like HTML for it: no such label may show them.
    for (const QLabel* const label : open.window.findChildren<QLabel*>()) {
        if (label->textFormat() == Qt::PlainText) continue;
        for (const HostileText& hostile : tests::hostileTexts())
            EXPECT_FALSE(label->text().contains(shownText(hostile.text)))
                << label->objectName().toStdString() << label->text().toStdString();
    }
    for (const QTreeWidget* const tree : open.window.findChildren<QTreeWidget*>()) {
        for (const QTreeWidgetItem* const item :
             tree->findItems(QString(), Qt::MatchContains | Qt::MatchRecursive)) {
            const QString toolTip = item->toolTip(0);
            EXPECT_TRUE(toolTip.isEmpty() || asSeenInToolTip(toolTip) == item->text(0));
        }
    }
}

}  // namespace
}  // namespace pantile::desktop
