#include "desktop/models/profile.h"

#include <algorithm>
#include <type_traits>

#include "core/text.h"
#include "tasks/keep_estimates.h"

namespace pantile::desktop {

using catalogue::NamedPalette;
using core::Board;
using core::Canvas;
using core::Result;

namespace {

template <typename Kind>
std::vector<Kind> allOf(const std::vector<Profile>& profiles) {
    std::vector<Kind> found;
    for (const Profile& each : profiles) {
        if (const Kind* const one = std::get_if<Kind>(&each)) found.push_back(*one);
    }
    return found;
}

// As the library compares names: letter case of ASCII aside.
bool isSameName(std::string_view one, std::string_view other) {
    const auto lower = [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c; };
    return std::ranges::equal(one, other, {}, lower, lower);
}

bool isTaken(const ProfileKey& key, const Profiles& known) {
    return std::ranges::any_of(known.all, [&](const Profile& each) {
        const ProfileKey other = keyOf(each);
        return other.kind == key.kind && isSameName(other.name, key.name);
    });
}

ProfileKey freeKey(ProfileKind kind, const std::string& stem, int first, const Profiles& known) {
    for (int number = first;; ++number) {
        const ProfileKey key{kind, stem + ' ' + std::to_string(number)};
        if (!isTaken(key, known)) return key;
    }
}

std::string wordFor(ProfileKind kind) {
    switch (kind) {
        case ProfileKind::Canvas:
            return "Canvas";
        case ProfileKind::Board:
            return "Board";
        case ProfileKind::Palette:
            return "Palette";
    }
    return {};
}

Profile usualOf(ProfileKind kind) {
    switch (kind) {
        case ProfileKind::Board: {
            Board board;
            board.name = "board";
            return board;
        }
        case ProfileKind::Palette:
            return NamedPalette{{}, *core::Palette::create({{0, 0, 0}, {255, 255, 255}})};
        case ProfileKind::Canvas:
            break;
    }
    constexpr core::Size kUsualGrid{32, 32};
    Canvas canvas;
    canvas.size = kUsualGrid;
    canvas.geometry = core::CanvasGeometry::beside(kUsualGrid);
    return canvas;
}

Result<void> checkOne(const Canvas& canvas) {
    return core::checkCanvas(canvas);
}

Result<void> checkOne(const Board& board) {
    return core::checkBoard(board);
}

Result<void> checkOne(const NamedPalette& palette) {
    return core::checkName("palette name", palette.name);
}

}  // namespace

const Profile* Profiles::find(const ProfileKey& key) const {
    const auto found =
        std::ranges::find_if(all, [&](const Profile& each) { return keyOf(each) == key; });
    return found == all.end() ? nullptr : &*found;
}

std::vector<Canvas> Profiles::canvases() const {
    return allOf<Canvas>(all);
}

std::vector<Board> Profiles::boards() const {
    return allOf<Board>(all);
}

std::vector<NamedPalette> Profiles::palettes() const {
    return allOf<NamedPalette>(all);
}

ProfileKey keyOf(const Profile& profile) {
    return {static_cast<ProfileKind>(profile.index()),
            std::visit([](const auto& one) { return one.name; }, profile)};
}

void setName(Profile& profile, std::string name) {
    std::visit([&](auto& one) { one.name = std::move(name); }, profile);
}

Profile newProfile(ProfileKind kind, const Profiles& known) {
    Profile profile = usualOf(kind);
    setName(profile, freeKey(kind, wordFor(kind), 1, known).name);
    return profile;
}

Profile copyOf(const Profile& profile, const Profiles& known) {
    constexpr std::size_t kRoomForSuffix = 6;
    constexpr std::size_t kLongest = 60;
    const ProfileKey key = keyOf(profile);
    Profile copy = profile;
    const std::string stem = core::cleanedText(key.name, {"name", kLongest - kRoomForSuffix});
    setName(copy, freeKey(key.kind, stem, 2, known).name);
    return copy;
}

Result<void> checkProfile(const Profile& profile, const ProfileKey& own, const Profiles& known) {
    PANTILE_RETURN_IF_ERROR(std::visit([](const auto& one) { return checkOne(one); }, profile));
    const ProfileKey key = keyOf(profile);
    if (isSameName(key.name, own.name) || !isTaken(key, known)) return {};
    return core::Error{core::ErrorKind::AlreadyExists,
                       "'" + core::excerpt(key.name) + "' is there already", "choose another name"};
}

Result<void> addProfile(catalogue::Library& library, const Profile& profile) {
    if (const auto* const canvas = std::get_if<Canvas>(&profile))
        return tasks::addCanvas(library, *canvas);
    if (const auto* const board = std::get_if<Board>(&profile))
        return tasks::addBoard(library, *board);
    const auto& palette = std::get<NamedPalette>(profile);
    return catalogue::addPalette(library, palette.name, palette.palette);
}

Result<void> changeProfile(catalogue::Library& library, const std::string& name,
                           const Profile& profile) {
    if (const auto* const canvas = std::get_if<Canvas>(&profile))
        return tasks::changeCanvas(library, name, *canvas);
    if (const auto* const board = std::get_if<Board>(&profile))
        return tasks::changeBoard(library, name, *board);
    return catalogue::changePalette(library, name, std::get<NamedPalette>(profile));
}

Result<void> removeProfile(catalogue::Library& library, const ProfileKey& key) {
    switch (key.kind) {
        case ProfileKind::Canvas:
            return tasks::removeCanvas(library, key.name);
        case ProfileKind::Board:
            return tasks::removeBoard(library, key.name);
        case ProfileKind::Palette:
            return catalogue::removePalette(library, key.name);
    }
    return {};
}

}  // namespace pantile::desktop
