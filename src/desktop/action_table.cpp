#include "desktop/action_table.h"

#include <algorithm>
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

// What is there in the place Edit alone.
ActionRow inEdit(ActionId id, const char* name, const char* text, const char* what,
                 const QList<QKeySequence>& keys) {
    return {id, Menu::Edit, name, text, what, keys, Needs::Nothing, false, Heard::InEdit};
}

ActionRow switchInEdit(ActionId id, const char* name, const char* text, const char* what,
                       Qt::Key key) {
    return {id,   Menu::Edit,   name, text, what, {QKeySequence(key)}, Needs::Nothing,
            true, Heard::InEdit};
}

std::vector<ActionRow> makeEditTable() {
    const auto key = [](Qt::Key one) { return QList<QKeySequence>{QKeySequence(one)}; };
    return {
        inEdit(ActionId::Undo, "undo", "&Undo", "Take the last change back",
               standard(QKeySequence::Undo)),
        inEdit(ActionId::Redo, "redo", "&Redo", "Do again what was taken back",
               standard(QKeySequence::Redo)),
        inEdit(ActionId::Keep, "keep", "&Keep", "Keep the work in the library, as one revision",
               standard(QKeySequence::Save)),
        inEdit(ActionId::TakeBackAll, "takeBackAll", "Take &Back All",
               "Go back to what the library has; undo brings the work again",
               {QKeySequence(Qt::CTRL | Qt::Key_Backspace)}),
        switchInEdit(ActionId::PenTool, "penTool", "&Pen", "Pen: paint cell by cell", Qt::Key_P),
        switchInEdit(ActionId::LineTool, "lineTool", "&Line", "Line: from one cell to another",
                     Qt::Key_L),
        switchInEdit(ActionId::RectangleTool, "rectangleTool", "Rect&angle",
                     "Rectangle: from one corner to the opposite", Qt::Key_R),
        switchInEdit(ActionId::EllipseTool, "ellipseTool", "&Ellipse",
                     "Ellipse: in the rectangle between two corners", Qt::Key_E),
        switchInEdit(ActionId::CurveTool, "curveTool", "&Curve",
                     "Curve: its two ends, then a cell that it goes through", Qt::Key_C),
        switchInEdit(ActionId::FillTool, "fillTool", "&Fill",
                     "Fill: the cells of one colour that hang together", Qt::Key_F),
        switchInEdit(ActionId::FillAlikeTool, "fillAlikeTool", "Fill Al&ike",
                     "Fill alike: all cells of one colour", Qt::Key_A),
        switchInEdit(ActionId::GradientTool, "gradientTool", "&Gradient",
                     "Gradient: from the colour picked to the other one", Qt::Key_G),
        switchInEdit(ActionId::CropTool, "cropTool", "Cr&op",
                     "Crop: keep what lies between two corners", Qt::Key_X),
        inEdit(ActionId::Thicker, "thicker", "&Thicker", "A thicker brush", key(Qt::Key_Plus)),
        inEdit(ActionId::Thinner, "thinner", "T&hinner", "A thinner brush", key(Qt::Key_Minus)),
        inEdit(ActionId::NextColour, "nextColour", "&Next Colour", "Pick the next colour",
               key(Qt::Key_Period)),
        inEdit(ActionId::PreviousColour, "previousColour", "Pre&vious Colour",
               "Pick the colour before", key(Qt::Key_Comma)),
        inEdit(ActionId::NextSymmetry, "nextSymmetry", "Next &Symmetry",
               "Mirror what is painted: the next kind of symmetry", key(Qt::Key_S)),
        switchInEdit(ActionId::PaintAround, "paintAround", "Paint Aroun&d the Edges",
                     "Paint on at the opposite edge, with the neighbours shown", Qt::Key_W),
        switchInEdit(ActionId::CellLines, "cellLines", "Lines Bet&ween Cells",
                     "Show lines between the cells", Qt::Key_H),
        inEdit(ActionId::WholeTexture, "wholeTexture", "Sho&w the Whole Texture",
               "Show the whole texture, as large as there is room for", key(Qt::Key_Z)),
    };
}

std::vector<ActionRow> makeBoardsTable() {
    const auto inTray = [](ActionId id, const char* name, const char* text, const char* what,
                           const QList<QKeySequence>& keys) {
        return ActionRow{id,   Menu::Boards,   name,  text,         what,
                         keys, Needs::Nothing, false, Heard::InTray};
    };
    const auto shift = [](Qt::Key key) {
        return QList<QKeySequence>{QKeySequence(Qt::CTRL | Qt::SHIFT | key)};
    };
    return {
        {ActionId::PutInLoad,
         Menu::Boards,
         "putInLoad",
         "&Put in the Load",
         "Put what is chosen in the library in the load in the tray",
         {QKeySequence(Qt::Key_Insert), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_P)},
         Needs::Selection},
        inTray(ActionId::TakeOut, "takeOut", "&Take Out",
               "Take what is chosen in the tray out of the load", standard(QKeySequence::Delete)),
        inTray(ActionId::SlotEarlier, "slotEarlier", "One Slot &Earlier",
               "Move what is chosen in the tray one slot to the front",
               {QKeySequence(Qt::ALT | Qt::Key_Left)}),
        inTray(ActionId::SlotLater, "slotLater", "One Slot &Later",
               "Move what is chosen in the tray one slot to the back",
               {QKeySequence(Qt::ALT | Qt::Key_Right)}),
        {ActionId::NewLoad, Menu::Boards, "newLoad", "&New Load",
         "Put a new load in the tray, for the same board", standard(QKeySequence::New)},
        {ActionId::RenameLoad, Menu::Boards, "renameLoad", "Rena&me Load...",
         "Give the load in the tray another name", shift(Qt::Key_R)},
        {ActionId::RemoveLoad, Menu::Boards, "removeLoad", "Remo&ve Load",
         "Remove the load in the tray; its textures stay", shift(Qt::Key_Delete)},
        {ActionId::ChooseForMe,
         Menu::Boards,
         "chooseForMe",
         "&Choose for Me",
         "Let the best set that fits the board be picked",
         {QKeySequence(Qt::CTRL | Qt::Key_M)}},
        {ActionId::WriteLoad, Menu::Boards, "writeLoad", "&Write Load...",
         "Write what the board reads, and prove that it draws every cell", shift(Qt::Key_W)},
        {ActionId::VerifyLoad, Menu::Boards, "verifyLoad", "Veri&fy a Written Load...",
         "Read a written load again and draw it on a virtual canvas", shift(Qt::Key_Y)},
        {ActionId::PrintSlots, Menu::Boards, "printSlots", "Print the Slot &Sheet...",
         "Write a page that shows what lies in which slot", standard(QKeySequence::Print)},
        {ActionId::Calibrate, Menu::Boards, "calibrate", "Cali&brate a Canvas...",
         "Find out a canvas's pitch and origin by a drawing", shift(Qt::Key_J)},
    };
}

ActionRow starAction(ActionId id, const char* name, const char* text, const char* what,
                     Qt::Key digit) {
    return {id, Menu::Texture, name, text, what, {QKeySequence(Qt::ALT | digit)}, Needs::Selection};
}

std::vector<ActionRow> makeTable() {
    const auto ctrl = [](int key) { return QList<QKeySequence>{QKeySequence(Qt::CTRL | key)}; };
    std::vector<ActionRow> table = {
        {ActionId::AddPictures, Menu::Library, "addPictures", "&Add Pictures...",
         "Add pictures, grids or texts with codes", standard(QKeySequence::Open)},
        {ActionId::AddFolder,
         Menu::Library,
         "addFolder",
         "Add a &Folder...",
         "Add everything in a folder",
         {QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_O)}},
        {ActionId::AddSamples,
         Menu::Library,
         "addSamples",
         "Add the Sa&mples",
         "Add the demo textures that come with the program",
         {QKeySequence(Qt::CTRL | Qt::ALT | Qt::Key_O)}},
        {ActionId::Paste, Menu::Library, "paste", "&Paste",
         "Add the picture or the codes on the clipboard", standard(QKeySequence::Paste)},
        {ActionId::UndoInLibrary, Menu::Library, "undoInLibrary", "&Undo",
         "Take back what was last done to the library, also before the last start",
         standard(QKeySequence::Undo), Needs::Nothing, false, Heard::InLibrary},
        {ActionId::RedoInLibrary, Menu::Library, "redoInLibrary", "Re&do",
         "Do again what was taken back in the library", standard(QKeySequence::Redo),
         Needs::Nothing, false, Heard::InLibrary},
        {ActionId::SaveSearch,
         Menu::Library,
         "saveSearch",
         "&Save the Search...",
         "Keep what the search field says under a name",
         {QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_S)}},
        {ActionId::RenameFilter,
         Menu::Library,
         "renameFilter",
         "R&ename Shelf, Tag or Saved Search...",
         "Give what is chosen at the side another name",
         {QKeySequence(Qt::SHIFT | Qt::Key_F2)}},
        {ActionId::DropFilter,
         Menu::Library,
         "dropFilter",
         "Remo&ve Shelf, Tag or Saved Search",
         "Remove what is chosen at the side; textures stay",
         {QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_Backspace)}},
        {ActionId::Profiles,
         Menu::Library,
         "profiles",
         "Can&vases, Boards and Palettes...",
         "Change what the toolkit accepts, the boards and the palettes",
         {QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_K)}},
        {ActionId::Quit,
         Menu::Library,
         "quit",
         "&Quit",
         "Close the window",
         {QKeySequence(Qt::CTRL | Qt::Key_Q)}},
        {ActionId::CopyCode, Menu::Texture, "copyCode", "&Copy Code",
         "Copy the codes of what is selected", standard(QKeySequence::Copy), Needs::Selection},
        {ActionId::TouchUp, Menu::Texture, "touchUp", "&Touch Up",
         "Go to the place called Edit with what is selected", ctrl(Qt::Key_E), Needs::Selection},
        {ActionId::EditWords,
         Menu::Texture,
         "editWords",
         "&Words...",
         "Change title, author, licence, note, tags and stars of all that are selected",
         {QKeySequence(Qt::Key_F2)},
         Needs::Selection},
        starAction(ActionId::NoStars, "noStars", "&No Stars", "Take the stars away", Qt::Key_0),
        starAction(ActionId::OneStar, "oneStar", "&1 Star", "Give one star", Qt::Key_1),
        starAction(ActionId::TwoStars, "twoStars", "&2 Stars", "Give two stars", Qt::Key_2),
        starAction(ActionId::ThreeStars, "threeStars", "&3 Stars", "Give three stars", Qt::Key_3),
        starAction(ActionId::FourStars, "fourStars", "&4 Stars", "Give four stars", Qt::Key_4),
        starAction(ActionId::FiveStars, "fiveStars", "&5 Stars", "Give five stars", Qt::Key_5),
        {ActionId::PutOnShelf, Menu::Texture, "putOnShelf", "&Put on a Shelf...",
         "Put what is selected on a shelf, a new one too", ctrl(Qt::Key_L), Needs::Selection},
        {ActionId::TakeFromShelf,
         Menu::Texture,
         "takeFromShelf",
         "Take &from a Shelf",
         "Take what is selected from the shelf that is shown, or another",
         {QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_L)},
         Needs::Selection},
        {ActionId::Remove, Menu::Texture, "remove", "&Remove",
         "Remove what is selected; it can be brought back", standard(QKeySequence::Delete),
         Needs::Selection, false, Heard::InLibrary},
        {ActionId::Recover,
         Menu::Texture,
         "recover",
         "&Bring Back",
         "Bring removed textures back",
         {QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_B)},
         Needs::Selection},
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
        {ActionId::EditPlace, Menu::View, "editPlace", "Go to &Edit",
         "Go to edit: touch up the texture that is chosen", ctrl(Qt::Key_2), Needs::Nothing, true},
        {ActionId::CodesPlace, Menu::View, "codesPlace", "Go to &Codes",
         "Go to the codes: share what is chosen, read a text", ctrl(Qt::Key_3), Needs::Nothing,
         true},
        {ActionId::BoardsPlace, Menu::View, "boardsPlace", "Go to &Boards",
         "Go to the boards: choose, write and watch the drawing", ctrl(Qt::Key_4), Needs::Nothing,
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
        {ActionId::Filters, Menu::View, "filters", "Shelves and Ta&gs",
         "Show or hide shelves, tags and saved searches", ctrl(Qt::Key_B), Needs::Nothing, true},
        {ActionId::Tray, Menu::View, "tray", "Load T&ray",
         "Show or hide the load along the bottom edge", ctrl(Qt::Key_G), Needs::Nothing, true},
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
    for (const std::vector<ActionRow>& more : {makeEditTable(), makeBoardsTable()})
        table.insert(table.end(), more.begin(), more.end());
    std::ranges::stable_sort(table, {}, &ActionRow::menu);
    return table;
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
        case Menu::Edit:
            return translatedAction("&Edit");
        case Menu::Codes:
            return translatedAction("&Codes");
        case Menu::Boards:
            return translatedAction("&Boards");
        case Menu::View:
            return translatedAction("&View");
        case Menu::Help:
            return translatedAction("&Help");
    }
    return {};
}

std::span<const WidgetKey> widgetKeys() {
    static constexpr std::array<WidgetKey, 17> kKeys = {{
        {"Tab, Shift+Tab", "Go on to the next part of the window, or back"},
        {"Arrow keys, Home, End", "Choose among the textures"},
        {"Shift or Ctrl with these, Space", "Choose several textures"},
        {"Ctrl+A", "Choose all that are shown"},
        {"Escape, Down", "In the search field: empty it; go to the textures"},
        {"F2, Delete", "On a shelf, a tag or a saved search: rename it; remove it"},
        {"Enter", "On a texture of the library: touch it up"},
        {"Left, Right, Home, End", "In the tray: go from slot to slot; with Shift, choose several"},
        {"Space, Home, End", "On the drawing: play or pause; to its start and end"},
        {"Left, Right", "On the drawing: one report back or on; with Ctrl, one stroke"},
        {"0 to 9", "In Edit: pick the colour of that number; two digits are one number"},
        {"Arrow keys", "On the cells: go from cell to cell; with Ctrl, move what is shown"},
        {"Enter, Enter again", "On the cells: begin to paint at one cell, end at another"},
        {"Space, Escape", "On the cells: pick up a cell's colour; leave what was begun"},
        {"Insert, Ctrl+D, F2, Delete",
         "Among canvases, boards and palettes: a new one, one like it, its name, remove it"},
        {"Insert, Delete, Alt+Up, Alt+Down",
         "On a palette's colours: a new one, take it out, one place up or down"},
        {"Enter", "On the palette: take the colour picked as the other one, for gradients"},
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
        if (row.heard != Heard::InTheWindow)
            action->setShortcutContext(Qt::WidgetWithChildrenShortcut);
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
