#pragma once

// Actions: what people did to the library, newest first, and how it is undone and done again, in
// any program and after any restart. An action is undone wholly or not at all; it is always the
// newest that is not undone yet. See docs/keeping.md.

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "catalogue/action_journal.h"
#include "catalogue/library.h"
#include "core/ids.h"
#include "core/result.h"

namespace pantile::catalogue {

struct Action {
    std::int64_t id = 0;
    std::int64_t at = 0;  ///< When it was done first; unix seconds.
    std::string what;     ///< "Rename tag foam to froth"
    ActionState state = ActionState::Done;

    bool operator==(const Action&) const = default;
};

/// Newest first, at most `most`.
core::Result<std::vector<Action>> listActions(const Library& library, std::int64_t most);

/// What undoLast would undo, or nothing.
core::Result<std::optional<Action>> lastAction(const Library& library);

/// What redoLast would do again, or nothing.
core::Result<std::optional<Action>> lastUndone(const Library& library);

/// What an undoing did.
struct UndoneAction {
    Action action;
    std::vector<core::TextureId> newPictures;  ///< Textures whose picture is another than before.
    bool changedProfiles = false;              ///< Canvases or boards were changed.
};

/// Makes the library what it was before the last action. But textures that it added are only
/// removed, and can be recovered. Not inside another transaction. Errors: NotFound if there is
/// nothing to undo; InvalidInput if that cannot be undone, or something that it changed has been
/// changed since; Corrupt; Busy; Io.
core::Result<UndoneAction> undoLast(Library& library);

/// Makes the library what it was before the last undoing. Doing anything else makes this
/// impossible. Errors: as undoLast.
core::Result<UndoneAction> redoLast(Library& library);

/// Names what the open transaction does, unless it has a name already. For the functions of
/// catalogue.
void nameAction(Library& library, std::string what);

/// What is done while it lives is one action, however many transactions it takes.
class OneAction {
public:
    OneAction(Library& library, std::string what);
    OneAction(const OneAction&) = delete;
    OneAction& operator=(const OneAction&) = delete;
    ~OneAction();

private:
    Connection& m_connection;
};

/// What is done while it lives is no action: it is not undone, and not shown.
class NoAction {
public:
    explicit NoAction(const Library& library);
    NoAction(const NoAction&) = delete;
    NoAction& operator=(const NoAction&) = delete;
    ~NoAction();

private:
    Connection& m_connection;
};

/// Forgets all actions. Inside a transaction or not.
core::Result<void> forgetActions(Library& library);

/// Errors: Corrupt if what is kept of an action is not whole.
core::Result<void> checkActions(Connection& connection);

/// "texture 17", "3 textures": for names of actions.
std::string texturesInWords(std::span<const core::TextureId> ids);

/// "'Pier'": a name or a title for names of actions, safe to print and cut where it is long.
std::string nameInWords(std::string_view name);

}  // namespace pantile::catalogue
