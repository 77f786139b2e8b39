#pragma once

// Profile: a canvas, a board or a named palette, where the window treats them alike.

#include <compare>
#include <string>
#include <variant>
#include <vector>

#include "catalogue/library.h"
#include "catalogue/palettes.h"
#include "core/board.h"
#include "core/canvas.h"
#include "core/result.h"

namespace pantile::desktop {

/// In the order of the alternatives of Profile.
enum class ProfileKind { Canvas, Board, Palette };

using Profile = std::variant<core::Canvas, core::Board, catalogue::NamedPalette>;

struct ProfileKey {
    ProfileKind kind = ProfileKind::Canvas;
    std::string name;

    auto operator<=>(const ProfileKey&) const = default;
};

/// All that a library has, each kind sorted by name.
struct Profiles {
    std::vector<Profile> all;

    bool operator==(const Profiles&) const = default;

    const Profile* find(const ProfileKey& key) const;
    std::vector<core::Canvas> canvases() const;
    std::vector<core::Board> boards() const;
    std::vector<catalogue::NamedPalette> palettes() const;
};

ProfileKey keyOf(const Profile& profile);
void setName(Profile& profile, std::string name);

/// A usual one to begin with, under the first name that is free: "Canvas 2".
Profile newProfile(ProfileKind kind, const Profiles& known);

/// The same as `profile` under a free name made of its own.
Profile copyOf(const Profile& profile, const Profiles& known);

/// Errors: as the check of its kind; AlreadyExists if another than `own` has the name.
core::Result<void> checkProfile(const Profile& profile, const ProfileKey& own,
                                const Profiles& known);

/// In the library, each as one action. Errors: as the functions of tasks/keep_estimates.h and
/// catalogue/palettes.h.
core::Result<void> addProfile(catalogue::Library& library, const Profile& profile);
core::Result<void> changeProfile(catalogue::Library& library, const std::string& name,
                                 const Profile& profile);
core::Result<void> removeProfile(catalogue::Library& library, const ProfileKey& key);

}  // namespace pantile::desktop
