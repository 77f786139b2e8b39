#pragma once

// The one table of actions: menus, keys and the list of keys (F1) are made from it.

#include <map>
#include <span>

#include <QKeySequence>
#include <QList>

class QAction;
class QObject;

namespace pantile::desktop {

enum class ActionId {
    AddPictures,
    AddFolder,
    AddSamples,
    Paste,
    UndoInLibrary,
    RedoInLibrary,
    SaveSearch,
    RenameFilter,
    DropFilter,
    Profiles,
    Quit,
    CopyCode,
    Find,
    ShowAll,
    Tiled,
    Details,
    Filters,
    Larger,
    Smaller,
    LibraryPlace,
    EditPlace,
    CodesPlace,
    TouchUp,
    EditWords,
    NoStars,
    OneStar,
    TwoStars,
    ThreeStars,
    FourStars,
    FiveStars,
    PutOnShelf,
    TakeFromShelf,
    Remove,
    Recover,
    Undo,
    Redo,
    Keep,
    TakeBackAll,
    PenTool,
    LineTool,
    RectangleTool,
    EllipseTool,
    CurveTool,
    FillTool,
    FillAlikeTool,
    GradientTool,
    CropTool,
    Thicker,
    Thinner,
    NextColour,
    PreviousColour,
    NextSymmetry,
    PaintAround,
    CellLines,
    WholeTexture,
    CopyPost,
    CopyAllPosts,
    AddRead,
    PutInLoad,
    TakeOut,
    SlotEarlier,
    SlotLater,
    NewLoad,
    RenameLoad,
    RemoveLoad,
    ChooseForMe,
    WriteLoad,
    VerifyLoad,
    PrintSlots,
    Calibrate,
    BoardsPlace,
    Tray,
    Keys,
};

enum class Menu { Library, Texture, Edit, Codes, Boards, View, Help };

enum class Needs { Nothing, Selection };

/// Where an action's keys are heard: single letters must not be taken from fields elsewhere.
enum class Heard { InTheWindow, InEdit, InLibrary, InTray };

struct ActionRow {
    ActionId id;
    Menu menu;
    const char* name;  ///< Of the QAction object, for tests.
    const char* text;
    const char* what;  ///< One sentence for the list of keys.
    QList<QKeySequence> keys;
    Needs needs = Needs::Nothing;
    bool isSwitch = false;
    Heard heard = Heard::InTheWindow;
};

/// In the order of the menus.
std::span<const ActionRow> actionTable();

QString menuTitle(Menu menu);

/// Keys that belong to the platform's widgets rather than to an action, for the list of keys.
struct WidgetKey {
    const char* keys;
    const char* what;
};

std::span<const WidgetKey> widgetKeys();

/// The actions made from the table, owned by `parent`.
class Actions {
public:
    explicit Actions(QObject* parent);

    QAction& operator[](ActionId id) const { return *m_actions.at(id); }

    /// Enables what needs a selection, or not.
    void setHasSelection(bool hasSelection);

private:
    std::map<ActionId, QAction*> m_actions;
};

}  // namespace pantile::desktop
