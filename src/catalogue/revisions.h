#pragma once

// Every change of a texture goes through here: it keeps what was there before, so that it can be
// shown and taken back.

#include <cstdint>
#include <functional>

#include "catalogue/connection.h"
#include "catalogue/history.h"
#include "catalogue/texture_row.h"
#include "core/ids.h"
#include "core/result.h"
#include "core/texture.h"

namespace pantile::catalogue {

/// All of a texture that a change may touch.
struct TextureState {
    core::TextureText text;
    int stars = 0;
    bool removed = false;
    std::int64_t contentId = 0;

    bool operator==(const TextureState&) const = default;
};

/// Errors: NotFound.
core::Result<TextureState> loadState(Connection& connection, core::TextureId id);

/// Turns the state that it is given into the one wanted.
using StateChange = std::function<core::Result<void>(TextureState&)>;

/// Changes a texture and notes the revision; 1, or 0 if the change left all as it was.
/// To be called inside a transaction.
/// Errors: NotFound; AlreadyExists, naming it, if another texture has the content wanted; those of
/// `change`.
core::Result<std::int64_t> changeTexture(Connection& connection, core::TextureId id,
                                         RevisionKind kind, std::int64_t now,
                                         const StateChange& change);

/// Oldest first. Errors: NotFound.
core::Result<std::vector<Revision>> loadRevisions(Connection& connection, core::TextureId id);

/// The state as it was after revision `number`. Errors: NotFound, for the revision too.
core::Result<TextureState> stateAfter(Connection& connection, core::TextureId id, int number);

}  // namespace pantile::catalogue
