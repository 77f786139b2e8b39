#include "tasks/gather.h"

#include <algorithm>
#include <deque>

#include "catalogue/actions.h"
#include "catalogue/canvases.h"
#include "catalogue/edit.h"
#include "catalogue/library_file_reader.h"
#include "catalogue/open_files.h"
#include "catalogue/palettes.h"
#include "catalogue/query.h"
#include "catalogue/reader.h"
#include "catalogue/shelves.h"
#include "catalogue/tags.h"
#include "catalogue/writer.h"
#include "core/counted.h"
#include "core/text.h"
#include "core/trimmed.h"
#include "tasks/collect_files.h"
#include "tasks/drawing_choice.h"
#include "tasks/drawing_estimate.h"
#include "tasks/files.h"
#include "tasks/in_order.h"
#include "tasks/library_file.h"
#include "tasks/seam_measure.h"
#include "tasks/share_codes.h"

namespace pantile::tasks {

using core::Error;
using core::ErrorKind;
using core::Result;

namespace {

constexpr std::uint64_t kMaxInputBytes = std::uint64_t{256} << 20U;

// Others that are nearly the same must be read, some milliseconds for each that was added.
constexpr std::size_t kMostComparedNear = 100;

// One gathering: what all its files share.
struct Gathering {
    catalogue::Library& library;
    const GatherOptions& options;
    PictureSettings pictures;
    DrawingDefaults defaults;
    codec::PaletteLookup paletteLookup;
    GatherReport report;
    std::deque<std::string> piped;  // What can be read but once.
};

struct Item {
    FoundFile file;
    const std::string* bytes = nullptr;

    std::string path() const { return file.path.string(); }

    std::string name() const { return file.path.filename().string(); }
};

// What of an item can be done beside other items, without the library.
struct Prepared {
    std::string fileBytes;                         // Unless the item brought its own.
    std::optional<Result<Recognised>> recognised;  // Of pictures and of files that cannot be read.
    std::optional<catalogue::Estimate> estimate;   // Of a picture's texture.
    std::int64_t savedMs = 0;                      // Of its drawing, by simplifying.
    bool isLibraryFile = false;                    // It is not read yet.
};

Result<void> checkWords(const GatherOptions& options) {
    core::TextureText text;
    text.title = options.title.value_or("");
    text.author = options.author.value_or("");
    text.licence = options.licence.value_or("");
    text.source = options.source.value_or("");
    text.tags = options.tags;
    PANTILE_RETURN_IF_ERROR(core::checkTextureText(text));
    for (const std::string& tag : options.tags)
        PANTILE_RETURN_IF_ERROR(catalogue::checkNewTag(tag));
    return options.shelf.empty() ? Result<void>() : core::checkName("shelf name", options.shelf);
}

core::TextureText wordsFor(const core::Texture& texture, bool fromCode, const std::string& name,
                           const GatherOptions& options) {
    core::TextureText text = texture.text();
    const auto fill = [](std::string& field, const std::optional<std::string>& value) {
        if (field.empty() && value) field = core::trimmed(*value);
    };
    if (options.title && !fromCode) text.title = core::trimmed(*options.title);
    fill(text.title, options.title);
    fill(text.author, options.author);
    fill(text.licence, options.licence);
    fill(text.source, options.source);
    fill(text.source, core::cleanedText(name, {"source", core::kMaxSourceCharacters}));
    text.tags.insert(text.tags.end(), options.tags.begin(), options.tags.end());
    return text;
}

// Puts the texture on the shelf, and the tags on one that was there before: a new one has them.
// Returns whether anything of that is new.
Result<bool> fileTexture(Gathering& gathering, const catalogue::AddedTexture& texture) {
    const GatherOptions& options = gathering.options;
    const std::span<const core::TextureId> id(&texture.id, 1);
    std::int64_t changed = 0;
    if (texture.outcome != catalogue::AddedTexture::Outcome::Added && !options.tags.empty()) {
        PANTILE_ASSIGN_OR_RETURN(changed,
                                 catalogue::changeTags(gathering.library, id, options.tags, {}));
    }
    if (!options.shelf.empty()) {
        PANTILE_ASSIGN_OR_RETURN(const std::int64_t put,
                                 catalogue::putOnShelf(gathering.library, id, options.shelf));
        changed += put;
    }
    return changed > 0;
}

std::string whyUndrawable(const core::Texture& texture, const DrawingDefaults& defaults) {
    const auto canvas = chooseCanvas(texture, defaults.canvases);
    return canvas ? std::string() : canvas.error().message;
}

// Stores one texture with its shelf and its costs as one change.
Result<catalogue::AddedTexture> store(Gathering& gathering, const core::Texture& texture,
                                      const std::string& path, const RecognisedTexture& recognised,
                                      const Prepared& prepared) {
    PANTILE_ASSIGN_OR_RETURN(catalogue::Transaction transaction, gathering.library.begin());
    PANTILE_ASSIGN_OR_RETURN(const catalogue::AddedTexture added,
                             catalogue::addTexture(gathering.library, texture));
    using Outcome = catalogue::AddedTexture::Outcome;
    PANTILE_ASSIGN_OR_RETURN(const bool filed, fileTexture(gathering, added));
    if (added.outcome == Outcome::AlreadyThere) {
        PANTILE_ASSIGN_OR_RETURN(const catalogue::TextureRecord known,
                                 catalogue::readTexture(gathering.library, added.id));
        PANTILE_RETURN_IF_ERROR(transaction.commit());
        gathering.report.known.push_back(
            {added.id, known.texture.text().title, path, recognised.repairs, filed});
        return added;
    }
    PANTILE_RETURN_IF_ERROR(noteSeam(gathering.library, added.id, texture));
    PANTILE_RETURN_IF_ERROR(noteLook(gathering.library, added.id, texture));
    const auto estimate =
        prepared.estimate ? prepared.estimate : estimateDrawing(texture, gathering.defaults);
    if (estimate) {
        PANTILE_RETURN_IF_ERROR(catalogue::setEstimate(gathering.library, added.id, *estimate));
    }
    PANTILE_RETURN_IF_ERROR(transaction.commit());
    gathering.report.added.push_back(
        {added.id, texture.text().title, texture.grid().size(), texture.coloursUsed(), path,
         added.outcome == Outcome::Recovered, recognised.repairs, recognised.enlargement,
         recognised.difference, estimate,
         estimate ? std::string() : whyUndrawable(texture, gathering.defaults), prepared.savedMs,
         std::nullopt});
    return added;
}

void refuse(Gathering& gathering, const std::string& path, Error error) {
    gathering.report.refused.push_back({path, std::move(error), {}});
}

// Some of the textures of one file as one change.
Result<void> storeSome(Gathering& gathering, std::span<const RecognisedTexture> textures,
                       bool fromCodes, const Prepared& prepared, const std::string& path) {
    const std::string name = std::filesystem::path(path).filename().string();
    PANTILE_ASSIGN_OR_RETURN(catalogue::Transaction transaction, gathering.library.begin());
    for (const RecognisedTexture& each : textures) {
        const auto withWords =
            each.texture.withText(wordsFor(each.texture, fromCodes, name, gathering.options));
        if (!withWords) {
            refuse(gathering, path, withWords.error());
            continue;
        }
        PANTILE_RETURN_IF_ERROR(store(gathering, *withWords, path, each, prepared));
    }
    return transaction.commit();
}

// The codes of a long text are many, and each change of its own waits for the disk.
Result<void> storeAll(Gathering& gathering, const Recognised& recognised, const Prepared& prepared,
                      const std::string& path) {
    constexpr std::size_t kAtOnce = 50;
    const std::span<const RecognisedTexture> textures(recognised.textures);
    GatherReport& report = gathering.report;
    for (std::size_t begin = 0; begin < textures.size(); begin += kAtOnce) {
        const std::size_t added = report.added.size();
        const std::size_t known = report.known.size();
        auto stored = storeSome(gathering,
                                textures.subspan(begin, std::min(kAtOnce, textures.size() - begin)),
                                recognised.fromCodes, prepared, path);
        if (stored) continue;
        // The library took none of them.
        report.added.erase(report.added.begin() + static_cast<std::ptrdiff_t>(added),
                           report.added.end());
        report.known.erase(report.known.begin() + static_cast<std::ptrdiff_t>(known),
                           report.known.end());
        return stored;
    }
    return {};
}

Result<void> storeRecognised(Gathering& gathering, const Recognised& recognised,
                             const Prepared& prepared, const std::string& path) {
    PANTILE_RETURN_IF_ERROR(storeAll(gathering, recognised, prepared, path));
    for (const codec::DamagedCode& damaged : recognised.damaged) {
        const bool newer = !damaged.text.empty();
        gathering.report.refused.push_back(
            {path,
             {newer ? ErrorKind::Unsupported : ErrorKind::Corrupt,
              damaged.where + ": " + damaged.reason,
              newer ? "'pantile read' prints the text of the code, to be kept" : ""},
             damaged.text});
    }
    return {};
}

bool hasWords(const GatherOptions& options) {
    return options.title || options.author || options.licence || options.source ||
           !options.tags.empty() || !options.shelf.empty();
}

// A texture of a library file, with what its owner thought of it.
Result<void> storeFiled(Gathering& gathering, const FiledTexture& filed, const std::string& path) {
    const std::string name = std::filesystem::path(path).filename().string();
    PANTILE_ASSIGN_OR_RETURN(
        const core::Texture texture,
        filed.texture.withText(wordsFor(filed.texture, true, name, gathering.options)));
    PANTILE_ASSIGN_OR_RETURN(const catalogue::AddedTexture added,
                             store(gathering, texture, path, {texture, {}, {}, {}, {}}, {}));
    if (added.outcome != catalogue::AddedTexture::Outcome::Added) return {};
    const std::span<const core::TextureId> id(&added.id, 1);
    if (filed.stars > 0) {
        catalogue::TextPatch patch;
        patch.stars = filed.stars;
        PANTILE_RETURN_IF_ERROR(catalogue::setText(gathering.library, id, patch));
    }
    for (const std::string& shelf : filed.shelves) {
        PANTILE_RETURN_IF_ERROR(catalogue::putOnShelf(gathering.library, id, shelf));
    }
    return {};
}

Result<TakenLibrary> takeLibraryFile(Gathering& gathering, const Item& item,
                                     const core::Progress& progress) {
    catalogue::Library& library = gathering.library;
    TakenLibrary taken{item.path(), false, 0};
    auto source = item.bytes != nullptr ? textSource(*item.bytes) : fileSource(item.file.path);
    PANTILE_ASSIGN_OR_RETURN(const bool isNew, isNewLibrary(library));
    taken.whole = isNew && !hasWords(gathering.options);
    if (taken.whole) {
        PANTILE_ASSIGN_OR_RETURN(taken.textures,
                                 catalogue::readLibraryFile(library, std::move(source), progress));
        PANTILE_ASSIGN_OR_RETURN(gathering.defaults, drawingDefaults(library));
        return taken;
    }
    PANTILE_ASSIGN_OR_RETURN(catalogue::Transaction transaction, library.begin());
    const auto take = [&](const FiledTexture& filed) {
        ++taken.textures;
        return storeFiled(gathering, filed, item.path());
    };
    PANTILE_RETURN_IF_ERROR(forEachFiledTexture(library, std::move(source), take, progress));
    PANTILE_RETURN_IF_ERROR(transaction.commit());
    return taken;
}

// What the file is to blame for stands in the report; then nothing of it was taken.
Result<void> gatherLibrary(Gathering& gathering, const Item& item, const core::Progress& progress) {
    const GatherReport before = gathering.report;
    auto taken = takeLibraryFile(gathering, item, progress);
    if (taken) {
        gathering.report.libraries.push_back(*std::move(taken));
        return {};
    }
    gathering.report = before;
    const ErrorKind kind = taken.error().kind;
    if (kind == ErrorKind::Cancelled || kind == ErrorKind::Busy || kind == ErrorKind::Io) {
        return taken.error();
    }
    refuse(gathering, item.path(), taken.error());
    return {};
}

Prepared prepare(const Gathering& gathering, const Item& item, const std::stop_token& stop) {
    Prepared prepared;
    prepared.isLibraryFile =
        item.bytes != nullptr ? isLibraryFile(*item.bytes) : isLibraryFileAt(item.file.path);
    if (prepared.isLibraryFile) return prepared;
    if (item.bytes == nullptr) {
        auto read = readFile(item.file.path, kMaxInputBytes);
        if (!read) {
            prepared.recognised = read.error();
            return prepared;
        }
        prepared.fileBytes = *std::move(read);
    }
    const std::string& bytes = item.bytes != nullptr ? *item.bytes : prepared.fileBytes;
    // Codes may stand for palettes of the library, those of files before them too.
    if (!isPicture(bytes)) return prepared;
    auto recognised = recognise(item.name(), bytes, gathering.pictures, nullptr, {stop, {}});
    if (recognised) {
        const RecognisedTexture& made = recognised->textures.front();
        prepared.estimate = estimateDrawing(made.texture, gathering.defaults);
        if (made.fuller && prepared.estimate) {
            const auto fuller = estimateDrawing(*made.fuller, gathering.defaults);
            prepared.savedMs = fuller ? fuller->drawMs - prepared.estimate->drawMs : 0;
        }
    }
    prepared.recognised = std::move(recognised);
    return prepared;
}

// For what one may well think that it is taken.
std::string whatToGive(std::string_view bytes) {
    if (bytes.starts_with("SQLite format 3"))
        return "of another library add the file that 'export all --as json' writes of it";
    if (bytes.starts_with('{') && bytes.find("\"cells\"") != std::string_view::npos)
        return "a texture as JSON is not read back; export it as PNG, CSV or text";
    return "give a PNG, JPEG, GIF, BMP, WebP or SVG picture, a grid as CSV, or a text with codes "
           "in it";
}

Result<void> gatherOne(Gathering& gathering, const Item& item, const Prepared& prepared,
                       const core::Progress& progress) {
    if (prepared.isLibraryFile) return gatherLibrary(gathering, item, progress);
    const std::string path = item.path();
    const auto recognised =
        prepared.recognised
            ? *prepared.recognised
            : recognise(item.name(), item.bytes != nullptr ? *item.bytes : prepared.fileBytes,
                        gathering.pictures, gathering.paletteLookup, {progress.stop, {}});
    if (!recognised) {
        if (recognised.error().kind == ErrorKind::Cancelled) return recognised.error();
        refuse(gathering, path, recognised.error());
        return {};
    }
    if (!recognised->foreign) return storeRecognised(gathering, *recognised, prepared, path);
    if (item.file.insideFolder && !endsAsPicture(item.file.path)) {
        ++gathering.report.passedOver;
    } else {
        const std::string& bytes = item.bytes != nullptr ? *item.bytes : prepared.fileBytes;
        refuse(gathering, path,
               {ErrorKind::InvalidInput, "it holds no picture, grid or code", whatToGive(bytes)});
    }
    return {};
}

Error stoppedAfter(std::int64_t done, std::int64_t total) {
    return {
        ErrorKind::Cancelled,
        "stopped after " + std::to_string(done) + " of " + core::counted(total, "file", "files"),
        "what was added stays; the same command again adds the rest"};
}

bool isPiped(const std::filesystem::path& path) {
    std::error_code problem;
    const auto status = std::filesystem::status(path, problem);
    return std::filesystem::exists(status) && !std::filesystem::is_directory(status) &&
           !std::filesystem::is_regular_file(status);
}

std::vector<Item> itemsOf(const std::vector<GatherInput>& inputs, Gathering& gathering) {
    std::vector<Item> items;
    for (const GatherInput& input : inputs) {
        if (input.bytes) {
            items.push_back({{input.path, false}, &*input.bytes});
            continue;
        }
        const auto found = collectFiles(input.path);
        if (!found) {
            refuse(gathering, input.path, found.error());
            continue;
        }
        if (isPiped(input.path)) {
            auto read = readFile(input.path, kMaxInputBytes);
            if (!read) {
                refuse(gathering, input.path, read.error());
                continue;
            }
            gathering.piped.push_back(*std::move(read));
            items.push_back({{input.path, false}, &gathering.piped.back()});
            continue;
        }
        for (const UnreadFolder& unread : found->unread)
            refuse(gathering, unread.path.string(), unread.error);
        for (const FoundFile& file : found->files) {
            if (!catalogue::isPartOf(file.path, gathering.library.path())) {
                items.push_back({file, nullptr});
            } else if (file.insideFolder) {
                ++gathering.report.passedOver;
            } else {
                refuse(gathering, input.path,
                       {ErrorKind::InvalidInput, "it is the library itself", "name another file"});
            }
        }
    }
    return items;
}

std::string nameOfAction(const std::vector<GatherInput>& inputs, const std::vector<Item>& items) {
    if (items.size() == 1) return "Add " + catalogue::nameInWords(items.front().name());
    const std::string files = core::counted(std::ssize(items), "file", "files");
    if (inputs.size() > 1) return "Add " + files;
    return "Add " + files + " from " + catalogue::nameInWords(inputs.front().path);
}

bool isEmpty(const GatherReport& report) {
    return report.added.empty() && report.known.empty() && report.refused.empty() &&
           report.libraries.empty();
}

// All is added, and the report must not be lost: who stops this, or writes meanwhile, only misses
// what the textures are like.
Result<void> noteLookAlikes(catalogue::Library& library, GatherReport& report,
                            const core::Progress& progress) {
    if (report.added.empty()) return {};
    std::vector<core::TextureId> ids;
    for (const GatheredTexture& texture : report.added) ids.push_back(texture.id);
    const auto noted = workOutLooks(library, progress);
    const int within = std::size(ids) > kMostComparedNear ? 0 : catalogue::kUsualLikeness;
    auto found = noted ? cameFrom(library, ids, within, progress)
                       : Result<std::vector<std::optional<LookAlike>>>(noted.error());
    if (!found) {
        const ErrorKind kind = found.error().kind;
        const bool goesOn = kind == ErrorKind::Cancelled || kind == ErrorKind::Busy;
        return goesOn ? Result<void>() : found.error();
    }
    for (std::size_t i = 0; i < ids.size(); ++i) report.added[i].alike = std::move((*found)[i]);
    return {};
}

}  // namespace

Result<GatherReport> gather(catalogue::Library& library, const std::vector<GatherInput>& inputs,
                            const GatherOptions& options, const core::Progress& progress) {
    PANTILE_RETURN_IF_ERROR(checkWords(options));
    PANTILE_ASSIGN_OR_RETURN(DrawingDefaults defaults, drawingDefaults(library));
    Gathering gathering{library, options, options.pictures, std::move(defaults), {}, {}, {}};
    if (!options.canvas.empty()) {
        PANTILE_ASSIGN_OR_RETURN(gathering.pictures.canvas,
                                 catalogue::readCanvas(library, options.canvas));
    }
    gathering.paletteLookup = paletteLookup(library);

    const std::vector<Item> items = itemsOf(inputs, gathering);
    const catalogue::OneAction asOne(library, nameOfAction(inputs, items));
    const auto total = static_cast<std::int64_t>(items.size());
    const auto itemAt = [&](std::int64_t i) -> const Item& {
        return items[static_cast<std::size_t>(i)];
    };
    const auto work = [&](std::int64_t i) { return prepare(gathering, itemAt(i), progress.stop); };
    const auto take = [&](std::int64_t done, const Prepared& prepared) -> Result<void> {
        progress.tell(done, total, itemAt(done).name());
        if (progress.stopRequested()) return stoppedAfter(done, total);
        return gatherOne(gathering, itemAt(done), prepared, progress);
    };
    progress.tell(0, total, "");
    const auto ended = inOrder<Prepared>(total, work, take);
    if (!ended && isEmpty(gathering.report)) return ended.error();
    if (!ended) {
        gathering.report.stopped = ended.error();
        return std::move(gathering.report);
    }
    PANTILE_RETURN_IF_ERROR(noteLookAlikes(library, gathering.report, progress));
    progress.tell(total, total, "");
    return std::move(gathering.report);
}

}  // namespace pantile::tasks
