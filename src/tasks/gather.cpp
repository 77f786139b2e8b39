#include "tasks/gather.h"

#include "catalogue/canvases.h"
#include "catalogue/palettes.h"
#include "catalogue/shelves.h"
#include "catalogue/writer.h"
#include "core/text.h"
#include "tasks/collect_files.h"
#include "tasks/drawing_estimate.h"
#include "tasks/files.h"
#include "tasks/share_codes.h"

namespace pantile::tasks {

using core::Error;
using core::ErrorKind;
using core::Result;

namespace {

constexpr std::uint64_t kMaxInputBytes = std::uint64_t{256} << 20U;

// One gathering: what all its files share.
struct Gathering {
    catalogue::Library& library;
    const GatherOptions& options;
    PictureSettings pictures;
    DrawingDefaults defaults;
    codec::PaletteLookup paletteLookup;
    GatherReport report;
};

struct Item {
    FoundFile file;
    const std::string* bytes = nullptr;
};

Result<void> checkWords(const GatherOptions& options) {
    core::TextureText text;
    text.title = options.title.value_or("");
    text.author = options.author.value_or("");
    text.licence = options.licence.value_or("");
    text.source = options.source.value_or("");
    text.tags = options.tags;
    PANTILE_RETURN_IF_ERROR(core::checkTextureText(text));
    return options.shelf.empty() ? Result<void>() : core::checkName("shelf name", options.shelf);
}

core::TextureText wordsFor(const core::Texture& texture, bool fromCode, const std::string& name,
                           const GatherOptions& options) {
    core::TextureText text = texture.text();
    const auto fill = [](std::string& field, const std::optional<std::string>& value) {
        if (field.empty() && value) field = *value;
    };
    if (options.title && !fromCode) text.title = *options.title;
    fill(text.title, options.title);
    fill(text.author, options.author);
    fill(text.licence, options.licence);
    fill(text.source, options.source);
    fill(text.source, core::cleanedText(name, {"source", core::kMaxSourceCharacters}));
    text.tags.insert(text.tags.end(), options.tags.begin(), options.tags.end());
    return text;
}

// Stores one texture with its shelf and its costs as one change.
Result<void> store(Gathering& gathering, const core::Texture& texture, const std::string& path,
                   const RecognisedTexture& recognised) {
    PANTILE_ASSIGN_OR_RETURN(catalogue::Transaction transaction, gathering.library.begin());
    PANTILE_ASSIGN_OR_RETURN(const catalogue::AddedTexture added,
                             catalogue::addTexture(gathering.library, texture));
    using Outcome = catalogue::AddedTexture::Outcome;
    if (added.outcome == Outcome::AlreadyThere) {
        PANTILE_RETURN_IF_ERROR(transaction.commit());
        gathering.report.known.push_back(
            {added.id, texture.text().title, path, recognised.repairs});
        return {};
    }
    if (!gathering.options.shelf.empty()) {
        PANTILE_RETURN_IF_ERROR(catalogue::putOnShelf(gathering.library, std::span(&added.id, 1),
                                                      gathering.options.shelf));
    }
    // A texture that fits no canvas is kept all the same; it just has no figures.
    if (const auto estimate = estimateDrawing(texture, gathering.defaults)) {
        PANTILE_RETURN_IF_ERROR(catalogue::setEstimate(gathering.library, added.id, *estimate));
    }
    PANTILE_RETURN_IF_ERROR(transaction.commit());
    gathering.report.added.push_back(
        {added.id, texture.text().title, texture.grid().size(), texture.coloursUsed(), path,
         added.outcome == Outcome::Recovered, recognised.repairs, recognised.enlargement});
    return {};
}

void refuse(Gathering& gathering, const std::string& path, Error error) {
    gathering.report.refused.push_back({path, std::move(error), {}});
}

Result<void> storeRecognised(Gathering& gathering, const Recognised& recognised,
                             const std::string& path) {
    const std::string name = std::filesystem::path(path).filename().string();
    for (const RecognisedTexture& each : recognised.textures) {
        const auto withWords = each.texture.withText(
            wordsFor(each.texture, recognised.fromCodes, name, gathering.options));
        if (!withWords) {
            refuse(gathering, path, withWords.error());
            continue;
        }
        PANTILE_RETURN_IF_ERROR(store(gathering, *withWords, path, each));
    }
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

Result<void> gatherOne(Gathering& gathering, const Item& item, const core::Progress& progress) {
    const std::string path = item.file.path.string();
    std::string fileBytes;
    if (item.bytes == nullptr) {
        auto read = readFile(item.file.path, kMaxInputBytes);
        if (!read) {
            refuse(gathering, path, read.error());
            return {};
        }
        fileBytes = *std::move(read);
    }
    const std::string& bytes = item.bytes != nullptr ? *item.bytes : fileBytes;
    const auto recognised = recognise(item.file.path.filename().string(), bytes, gathering.pictures,
                                      gathering.paletteLookup, progress);
    if (!recognised) {
        if (recognised.error().kind == ErrorKind::Cancelled) return recognised.error();
        refuse(gathering, path, recognised.error());
        return {};
    }
    if (!recognised->foreign) return storeRecognised(gathering, *recognised, path);
    if (item.file.insideFolder) {
        ++gathering.report.passedOver;
    } else {
        refuse(
            gathering, path,
            {ErrorKind::InvalidInput, "it holds no picture, grid or code",
             "give a PNG, JPEG, GIF, BMP, WebP or SVG picture, a grid as CSV, or a text with codes "
             "in it"});
    }
    return {};
}

std::vector<Item> itemsOf(const std::vector<GatherInput>& inputs, Gathering& gathering) {
    std::vector<Item> items;
    for (const GatherInput& input : inputs) {
        if (input.bytes) {
            items.push_back({{input.path, false}, &*input.bytes});
            continue;
        }
        const auto files = collectFiles(input.path);
        if (!files) {
            refuse(gathering, input.path, files.error());
            continue;
        }
        for (const FoundFile& file : *files) items.push_back({file, nullptr});
    }
    return items;
}

}  // namespace

Result<GatherReport> gather(catalogue::Library& library, const std::vector<GatherInput>& inputs,
                            const GatherOptions& options, const core::Progress& progress) {
    PANTILE_RETURN_IF_ERROR(checkWords(options));
    PANTILE_ASSIGN_OR_RETURN(DrawingDefaults defaults, drawingDefaults(library));
    Gathering gathering{library, options, options.pictures, std::move(defaults), {}, {}};
    if (!options.canvas.empty()) {
        PANTILE_ASSIGN_OR_RETURN(gathering.pictures.canvas,
                                 catalogue::readCanvas(library, options.canvas));
    }
    gathering.paletteLookup = paletteLookup(library);

    const std::vector<Item> items = itemsOf(inputs, gathering);
    const auto total = static_cast<std::int64_t>(items.size());
    for (std::int64_t done = 0; done < total; ++done) {
        const Item& item = items[static_cast<std::size_t>(done)];
        if (progress.stopRequested()) {
            return Error{
                ErrorKind::Cancelled,
                "stopped after " + std::to_string(done) + " of " + std::to_string(total) + " files",
                "what was added stays; the same command again adds the rest"};
        }
        progress.tell(done, total, item.file.path.filename().string());
        PANTILE_RETURN_IF_ERROR(gatherOne(gathering, item, {progress.stop, {}}));
    }
    progress.tell(total, total, "");
    return std::move(gathering.report);
}

}  // namespace pantile::tasks
