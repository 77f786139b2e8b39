#include "desktop/action_table.h"

#include <array>
#include <vector>

#include <QAction>
#include <QCoreApplication>

namespace pantile::desktop {

namespace {

QString translatedAction(const char* text) {
    return QCoreApplication::translate("actions", text);
}

QList<QKeySequence> standard(QKeySequence::StandardKey key) {
    return QKeySequence::keyBindings(key);
}

std::vector<ActionRow> makeTable() {
    const auto ctrl = [](int key) { return QList<QKeySequence>{QKeySequence(Qt::CTRL | key)}; };
    return {
        {ActionId::AddPictures, Menu::Library, "addPictures", "&Add Pictures...",
         "Add pictures, grids or texts with codes", standard(QKeySequence::Open)},
        {ActionId::AddFolder,
         Menu::Library,
         "addFolder",
         "Add a &Folder...",
         "Add everything in a folder",
         {QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_O)}},
        {ActionId::Paste, Menu::Library, "paste", "&Paste",
         "Add the picture or the codes on the clipboard", standard(QKeySequence::Paste)},
        {ActionId::Quit,
         Menu::Library,
         "quit",
         "&Quit",
         "Close the window",
         {QKeySequence(Qt::CTRL | Qt::Key_Q)}},
        {ActionId::CopyCode, Menu::Texture, "copyCode", "&Copy Code",
         "Copy the codes of what is selected", standard(QKeySequence::Copy), Needs::Selection},
        {ActionId::CopyPost,
         Menu::Codes,
         "copyPost",
         "Copy This &Post",
         "Copy the post that is shown",
         {QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_C)}},
        {ActionId::CopyAllPosts,
         Menu::Codes,
         "copyAllPosts",
         "Copy &All Posts",
         "Copy all posts, an empty line between each two",
         {QKeySequence(Qt::CTRL | Qt::ALT | Qt::Key_C)}},
        {ActionId::AddRead, Menu::Codes, "addRead", "Add &What Was Read",
         "Add the textures whose codes stand in the text", ctrl(Qt::Key_Return)},
        {ActionId::LibraryPlace, Menu::View, "libraryPlace", "Go to L&ibrary",
         "Go to the library: find and organise", ctrl(Qt::Key_1), Needs::Nothing, true},
        {ActionId::CodesPlace, Menu::View, "codesPlace", "Go to &Codes",
         "Go to the codes: share what is chosen, read a text", ctrl(Qt::Key_3), Needs::Nothing,
         true},
        {ActionId::Find, Menu::View, "find", "&Find", "Go to the search field",
         standard(QKeySequence::Find)},
        {ActionId::ShowAll,
         Menu::View,
         "showAll",
         "Show &All",
         "Empty the search field and show every texture",
         {QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_F)}},
        {ActionId::Tiled, Menu::View, "tiled", "&Tiled", "Show the large picture as 3 x 3 tiles",
         ctrl(Qt::Key_T), Needs::Nothing, true},
        {ActionId::Details, Menu::View, "details", "&Details",
         "Show or hide the details of the selected texture", ctrl(Qt::Key_D), Needs::Nothing, true},
        {ActionId::Larger,
         Menu::View,
         "larger",
         "&Larger Pictures",
         "Show pictures larger",
         {QKeySequence(Qt::CTRL | Qt::Key_Plus), QKeySequence(Qt::CTRL | Qt::Key_Equal)}},
        {ActionId::Smaller, Menu::View, "smaller", "&Smaller Pictures", "Show pictures smaller",
         ctrl(Qt::Key_Minus)},
        {ActionId::Keys, Menu::Help, "keys", "&Keys", "Show this list",
         standard(QKeySequence::HelpContents)},
    };
}

}  // namespace

std::span<const ActionRow> actionTable() {
    static const std::vector<ActionRow> table = makeTable();
    return table;
}

QString menuTitle(Menu menu) {
    switch (menu) {
        case Menu::Library:
            return translatedAction("&Library");
        case Menu::Texture:
            return translatedAction("&Texture");
        case Menu::Codes:
            return translatedAction("&Codes");
        case Menu::View:
            return translatedAction("&View");
        case Menu::Help:
            return translatedAction("&Help");
    }
    return {};
}

std::span<const WidgetKey> widgetKeys() {
    static constexpr std::array<WidgetKey, 5> kKeys = {{
        {"Tab, Shift+Tab", "Go on to the next part of the window, or back"},
        {"Arrow keys, Home, End", "Choose among the textures"},
        {"Shift or Ctrl with these, Space", "Choose several textures"},
        {"Ctrl+A", "Choose all that are shown"},
        {"Escape, Down", "In the search field: empty it; go to the textures"},
    }};
    return kKeys;
}

Actions::Actions(QObject* parent) {
    for (const ActionRow& row : actionTable()) {
        auto* const action = new QAction(translatedAction(row.text), parent);
        action->setObjectName(QString::fromLatin1(row.name));
        action->setShortcuts(row.keys);
        action->setStatusTip(translatedAction(row.what));
        action->setCheckable(row.isSwitch);
        m_actions[row.id] = action;
    }
    setHasSelection(false);
}

void Actions::setHasSelection(bool hasSelection) {
    for (const ActionRow& row : actionTable()) {
        if (row.needs == Needs::Selection) m_actions.at(row.id)->setEnabled(hasSelection);
    }
}

}  // namespace pantile::desktop
