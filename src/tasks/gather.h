#pragma once

// Gather: pictures, grids and codes from files become textures of the library.

#include <optional>
#include <string>
#include <vector>

#include "catalogue/library.h"
#include "catalogue/texture_row.h"
#include "core/ids.h"
#include "core/progress.h"
#include "core/result.h"
#include "tasks/look_alikes.h"
#include "tasks/recognise.h"

namespace pantile::tasks {

struct GatherInput {
    std::string path;                  ///< A file or a folder; or, with `bytes`, just a name.
    std::optional<std::string> bytes;  ///< Contents that do not come from a file.
};

struct GatherOptions {
    std::string canvas;  ///< A canvas of the library by name, or empty.
    PictureSettings pictures;
    std::optional<std::string> title;
    std::optional<std::string> author;   ///< Fills in what a code does not say; never replaces it.
    std::optional<std::string> licence;  ///< The same.
    std::optional<std::string> source;   ///< Else the file's name.
    /// Added to those that a code carries, and to those of a texture that is known already.
    std::vector<std::string> tags;
    std::string shelf;  ///< Made if it is not there; or empty. For known textures too.
};

struct GatheredTexture {
    core::TextureId id;
    std::string title;
    core::Size size;
    int colours = 0;
    std::string path;
    bool recovered = false;                       ///< It was there, but removed, and is back.
    std::vector<std::string> repairs;             ///< What was put right in its code, in words.
    std::optional<double> enlargement;            ///< See RecognisedTexture.
    std::optional<Difference> difference;         ///< The same.
    std::optional<catalogue::Estimate> estimate;  ///< If a canvas takes it.
    std::string undrawable;                       ///< Else why none does.
    std::int64_t savedMs = 0;                     ///< Of drawing, by simplifying.
    std::optional<LookAlike> alike;               ///< One that was there and that it came from.
};

struct KnownTexture {
    core::TextureId id;
    std::string title;
    std::string path;
    std::vector<std::string> repairs;
    bool filed = false;  ///< It has a tag now, or stands on the shelf, that it had not before.
};

struct RefusedInput {
    std::string path;
    core::Error error;
    std::string text;  ///< The code itself, to be kept, if a newer version made it.
};

/// A library file: docs/library-file.md.
struct TakenLibrary {
    std::string path;
    bool whole = false;  ///< It became all of a new library; else its textures were added.
    std::int64_t textures =
        0;  ///< If whole: in it, removed ones too; else in the file, without those.
};

struct GatherReport {
    std::vector<GatheredTexture> added;
    std::vector<KnownTexture> known;
    std::vector<RefusedInput> refused;
    std::vector<TakenLibrary> libraries;
    std::int64_t passedOver = 0;         ///< Files in folders that hold nothing for us.
    std::optional<core::Error> stopped;  ///< Why it ended before all was looked at.
};

/// Each texture is one transaction, and each library file: when `progress` asks to stop, or the
/// disk is full, what was added stays, and the report says so. Errors: NotFound for the canvas;
/// InvalidInput for words that no texture may have; before anything was done, errors of the library
/// itself and Cancelled. What is wrong with single files stands in the report.
core::Result<GatherReport> gather(catalogue::Library& library,
                                  const std::vector<GatherInput>& inputs,
                                  const GatherOptions& options,
                                  const core::Progress& progress = {});

}  // namespace pantile::tasks
