#include "board/load_reader.h"

#include <algorithm>
#include <array>
#include <string_view>
#include <utility>

#include "board/load_layout.h"
#include "board/stroke_script.h"
#include "core/text.h"
#include "core/texture.h"
#include "drawing/replay.h"
#include "drawing/reports.h"
#include "drawing/timing.h"

namespace pantile::board {
namespace {

using core::Error;
using core::ErrorKind;
using core::Result;
using Span = std::span<const std::uint8_t>;

constexpr std::string_view kWriteAgain = "write the load again from the library";

Error corrupt(const std::string& message) {
    return {ErrorKind::Corrupt, message, std::string(kWriteAgain)};
}

/// Reads a part whose size was checked before.
class ByteReader {
public:
    explicit ByteReader(Span bytes) : m_bytes(bytes) {}

    std::uint8_t u8() { return m_bytes[m_next++]; }

    std::uint16_t u16() { return static_cast<std::uint16_t>(little(2)); }

    std::uint32_t u32() { return static_cast<std::uint32_t>(little(4)); }

    std::uint64_t u64() { return little(8); }

    Span bytes(std::size_t count) {
        const Span part = m_bytes.subspan(m_next, count);
        m_next += count;
        return part;
    }

private:
    std::uint64_t little(unsigned count) {
        std::uint64_t value = 0;
        for (unsigned i = 0; i < count; ++i) value |= std::uint64_t{u8()} << 8 * i;
        return value;
    }

    Span m_bytes;
    std::size_t m_next = 0;
};

std::string hexText(std::uint32_t value) {
    constexpr std::string_view kDigits = "0123456789abcdef";
    std::string text;
    for (int shift = 28; shift >= 0; shift -= 4) text += kDigits[value >> shift & 15U];
    return text;
}

Result<void> checkSum(std::uint32_t found, std::uint32_t stated, const std::string& what) {
    if (found == stated) return {};
    return Error{
        ErrorKind::ChecksumMismatch,
        what + " is damaged: its checksum is " + hexText(found) + ", not " + hexText(stated),
        std::string(kWriteAgain)};
}

/// Checks the checksum in the last four bytes of `part`.
Result<void> checkTail(Span part, const std::string& what) {
    const std::size_t body = part.size() - layout::kChecksumBytes;
    ByteReader tail(part.subspan(body));
    return checkSum(layout::checksumOf(part.first(body)), tail.u32(), what);
}

/// A text field: UTF-8 up to the first zero byte, and nothing but zeros from there on.
Result<std::string> textField(Span field, const std::string& what) {
    const auto end = std::find(field.begin(), field.end(), std::uint8_t{0});
    std::string text(field.begin(), end);
    const bool clean = std::all_of(end, field.end(), [](std::uint8_t byte) { return byte == 0; });
    if (!clean || !core::checkText(text, {what, field.size()})) {
        return corrupt("the " + what + " is no clean text");
    }
    return text;
}

struct Header {
    std::string name;
    core::PointerTiming timing;
    std::size_t slots = 0;
};

Result<void> checkMagicAndVersion(Span bytes) {
    if (bytes.size() < layout::kMagic.size() ||
        !std::equal(layout::kMagic.begin(), layout::kMagic.end(), bytes.begin())) {
        return Error{ErrorKind::Corrupt, "these bytes are no Pantile load",
                     "choose a file that 'load write' made"};
    }
    if (bytes.size() < layout::kHeaderBytes + layout::kChecksumBytes) {
        return corrupt("the load breaks off after " + std::to_string(bytes.size()) + " bytes");
    }
    const std::uint8_t version = bytes[layout::kMagic.size()];
    if (version == layout::kVersion) return {};
    // A newer version may be laid out in any way; a damaged byte here cannot be told from one.
    return Error{ErrorKind::Unsupported,
                 "the load has version " + std::to_string(version) +
                     ", and this program reads version " + std::to_string(layout::kVersion),
                 "use a newer Pantile, or write the load again"};
}

Result<Header> readHeader(Span bytes) {
    PANTILE_RETURN_IF_ERROR(checkMagicAndVersion(bytes));
    const Span part = bytes.first(layout::kHeaderBytes);
    PANTILE_RETURN_IF_ERROR(checkTail(part, "the load's header"));
    ByteReader reader(part.subspan(layout::kMagic.size() + 1));
    Header header;
    const std::size_t headerBytes = reader.u8();
    header.slots = reader.u8();
    const std::size_t entryBytes = reader.u8();
    const std::size_t total = reader.u32();
    header.timing.reportIntervalMs = reader.u16();
    header.timing.maxStepUp = reader.u8();
    header.timing.maxStepDown = reader.u8();
    header.timing.pressMs = reader.u16();
    header.timing.releaseMs = reader.u16();
    header.timing.settleMs = reader.u16();
    const int cornerReports = reader.u16();
    const std::uint32_t reserved = reader.u32();
    if (headerBytes != layout::kHeaderBytes || entryBytes != layout::kEntryBytes || reserved != 0) {
        return corrupt("the load's header is laid out in a way that version 1 does not know");
    }
    if (total != bytes.size() || total > layout::kMaxLoadBytes) {
        return corrupt("the load states " + std::to_string(total) + " bytes and has " +
                       std::to_string(bytes.size()));
    }
    if (header.slots == 0 || total < layout::kBaseBytes + layout::kEntryBytes * header.slots) {
        return corrupt("a load of " + std::to_string(total) + " bytes cannot hold " +
                       std::to_string(header.slots) + " slots");
    }
    if (cornerReports < 1 || cornerReports > layout::kMaxCornerReports) {
        return corrupt("the load states " + std::to_string(cornerReports) +
                       " reports to reach the corner");
    }
    if (const auto timing = core::checkTiming(header.timing); !timing) {
        return corrupt("the load's timing is out of range: " + timing.error().message);
    }
    PANTILE_ASSIGN_OR_RETURN(header.name, textField(reader.bytes(layout::kNameBytes), "load name"));
    return header;
}

/// What a directory entry says besides the parts of a ReadSlot.
struct Entry {
    std::size_t offset = 0;
    std::size_t length = 0;
    std::uint32_t checksum = 0;
    std::int64_t foretoldMs = 0;
    core::Fingerprint fingerprint;
    core::Size grid;
    int colours = 0;
    std::optional<core::PaletteIndex> transparent;
    core::Canvas canvas;
    core::Size picture;  ///< Both sides 0 if there is none.
    bool fills = false;
    std::string title;

    std::size_t paletteBytes() const {
        return layout::kColourBytes * static_cast<std::size_t>(colours);
    }

    std::size_t pictureBytes() const {
        return static_cast<std::size_t>(picture.width) * static_cast<std::size_t>(picture.height);
    }
};

Result<void> readPaletteShape(ByteReader& reader, Entry& entry) {
    entry.colours = reader.u8() + 1;
    const int hasTransparent = reader.u8();
    const std::uint8_t transparent = reader.u8();
    if (entry.colours < core::kMinPaletteColours || hasTransparent > 1 ||
        transparent >= entry.colours || (hasTransparent == 0 && transparent != 0)) {
        return corrupt("its palette is not possible");
    }
    if (hasTransparent == 1) entry.transparent = transparent;
    return {};
}

Result<void> readCanvas(ByteReader& reader, Entry& entry) {
    const int pen = reader.u8();
    core::CanvasGeometry& geometry = entry.canvas.geometry;
    geometry.gridCentre.x = reader.u16();
    geometry.gridCentre.y = reader.u16();
    geometry.swatchCentre.x = reader.u16();
    geometry.swatchCentre.y = reader.u16();
    geometry.cellPitch = reader.u8();
    geometry.swatchPitch = reader.u8();
    geometry.swatchesPerColumn = reader.u8() + 1;
    entry.canvas.freeColours = entry.colours;
    const int penModel = pen & layout::kPenModelBits;
    if (penModel > static_cast<int>(core::PenModel::Sampled)) {
        return corrupt("its pen model " + std::to_string(penModel) + " is unknown");
    }
    entry.canvas.penModel = static_cast<core::PenModel>(penModel);
    entry.canvas.rules.turns = (pen & layout::kNoTurns) == 0;
    entry.canvas.rules.covers = (pen & layout::kNoCovering) == 0;
    if ((pen & layout::kUndoneOutside) != 0) entry.canvas.rules.leaving = core::PenLeaving::Undone;
    entry.fills = (pen & layout::kFills) != 0;
    if (const auto canvas = core::checkUnnamedCanvas(entry.canvas); !canvas) {
        return corrupt("its canvas is not possible: " + canvas.error().message);
    }
    return {};
}

Result<Entry> readEntry(Span part) {
    PANTILE_RETURN_IF_ERROR(checkTail(part, "its directory entry"));
    ByteReader reader(part);
    Entry entry;
    entry.offset = reader.u32();
    entry.length = reader.u32();
    entry.checksum = reader.u32();
    entry.foretoldMs = reader.u32();
    entry.fingerprint.value = reader.u64();
    entry.grid.width = reader.u8() + 1;
    entry.grid.height = reader.u8() + 1;
    entry.canvas.size.width = reader.u8() + 1;
    entry.canvas.size.height = reader.u8() + 1;
    if (entry.grid.width > entry.canvas.size.width ||
        entry.grid.height > entry.canvas.size.height) {
        return corrupt("its grid is larger than its canvas");
    }
    PANTILE_RETURN_IF_ERROR(readPaletteShape(reader, entry));
    PANTILE_RETURN_IF_ERROR(readCanvas(reader, entry));
    const int encoding = reader.u8();
    if (encoding != layout::kScriptEncoding) {
        return Error{ErrorKind::Unsupported,
                     "its script encoding " + std::to_string(encoding) + " is unknown",
                     "use a newer Pantile, or write the load again"};
    }
    entry.picture.width = reader.u8();
    entry.picture.height = reader.u8();
    if (entry.picture.width > layout::kMaxPictureSide ||
        entry.picture.height > layout::kMaxPictureSide ||
        (entry.picture.width == 0) != (entry.picture.height == 0)) {
        return corrupt("its small picture is not possible");
    }
    PANTILE_ASSIGN_OR_RETURN(entry.title, textField(reader.bytes(layout::kTitleBytes), "title"));
    return entry;
}

Result<core::Palette> readPalette(ByteReader& reader, const Entry& entry) {
    std::vector<core::Rgb8> colours;
    for (int i = 0; i < entry.colours; ++i) {
        const Span rgb = reader.bytes(layout::kColourBytes);
        colours.push_back({rgb[0], rgb[1], rgb[2]});
    }
    return core::Palette::create(std::move(colours), entry.transparent);
}

Result<std::optional<core::Grid>> readPicture(ByteReader& reader, const Entry& entry) {
    if (entry.pictureBytes() == 0) return std::optional<core::Grid>();
    const Span cells = reader.bytes(entry.pictureBytes());
    PANTILE_ASSIGN_OR_RETURN(core::Grid picture,
                             core::Grid::create(entry.picture.width, entry.picture.height,
                                                {cells.begin(), cells.end()}));
    if (picture.largestIndex() >= entry.colours) {
        return corrupt("its small picture uses colours outside the palette");
    }
    return std::optional(std::move(picture));
}

/// What the canvas is filled with first, and its button's place into the canvas.
Result<core::PaletteIndex> readFill(ByteReader& reader, const Entry& entry, core::Canvas& canvas) {
    const core::PaletteIndex colour = reader.u8();
    core::Point place;
    place.x = reader.u16();
    place.y = reader.u16();
    canvas.geometry.fillButton = place;
    if (colour >= entry.colours) {
        return corrupt("it fills with colour " + std::to_string(colour) + " of a palette of " +
                       std::to_string(entry.colours));
    }
    if (const auto checked = core::checkUnnamedCanvas(canvas); !checked) {
        return corrupt("its canvas is not possible: " + checked.error().message);
    }
    return colour;
}

Result<ReadSlot> readData(Span data, const Entry& entry, const core::PointerTiming& timing) {
    PANTILE_RETURN_IF_ERROR(checkSum(layout::checksumOf(data), entry.checksum, "its data"));
    const std::size_t beforeScript =
        entry.paletteBytes() + entry.pictureBytes() + (entry.fills ? layout::kFillBytes : 0);
    if (data.size() <= beforeScript || data.size() - beforeScript > layout::kMaxScriptBytes) {
        return corrupt("it states " + std::to_string(data.size()) +
                       " bytes for palette, picture and script");
    }
    ByteReader reader(data);
    PANTILE_ASSIGN_OR_RETURN(core::Palette palette, readPalette(reader, entry));
    PANTILE_ASSIGN_OR_RETURN(std::optional<core::Grid> picture, readPicture(reader, entry));
    core::Canvas canvas = entry.canvas;
    std::optional<core::PaletteIndex> fill;
    if (entry.fills) {
        PANTILE_ASSIGN_OR_RETURN(fill, readFill(reader, entry, canvas));
    }
    const drawing::TimeModel model(canvas, timing);
    PANTILE_ASSIGN_OR_RETURN(
        std::vector<drawing::Stroke> strokes,
        decodeScript(data.subspan(beforeScript), {entry.grid, entry.colours, canvas.penModel,
                                                  canvas.rules.turns, model.jumpCells()}));
    return ReadSlot{entry.title,
                    entry.grid,
                    std::move(palette),
                    std::move(canvas),
                    drawing::timedPlan(std::move(strokes), model, fill),
                    entry.foretoldMs,
                    entry.fingerprint,
                    static_cast<std::int64_t>(layout::kEntryBytes + data.size()),
                    std::move(picture)};
}

/// A slot whose data have been found, and not read yet.
struct PlacedSlot {
    Entry entry;
    Span data;
    std::string name;  ///< For messages.
};

/// Finds slot `index`, whose data have to begin at `offset`; moves `offset` to their end.
Result<PlacedSlot> placeSlot(Span bytes, std::size_t index, std::size_t& offset) {
    const std::string place = "slot " + std::to_string(index + 1);
    auto entry = readEntry(
        bytes.subspan(layout::kHeaderBytes + layout::kEntryBytes * index, layout::kEntryBytes));
    if (!entry) return entry.error().at(place);
    const std::string named = place + " (" + core::excerpt(entry->title) + ")";
    const std::size_t end = bytes.size() - layout::kChecksumBytes;
    if (entry->offset != offset || entry->length > end - offset) {
        return corrupt("its data do not lie where they have to").at(named);
    }
    const Span data = bytes.subspan(offset, entry->length);
    offset += entry->length;
    return PlacedSlot{*std::move(entry), data, named};
}

/// Where the data of the first slot begin.
std::size_t dataStart(const Header& header) {
    return layout::kHeaderBytes + layout::kEntryBytes * header.slots;
}

/// Checks that the data end where the load does, and its checksum.
Result<void> checkEnd(Span bytes, std::size_t offset) {
    if (offset != bytes.size() - layout::kChecksumBytes) {
        return corrupt("the load has bytes that belong to no slot");
    }
    return checkTail(bytes, "the load");
}

/// The painted cells as a grid of the slot's own size.
Result<core::Grid> paintedGrid(const ReadSlot& slot, const drawing::Replayed& replayed) {
    std::vector<core::PaletteIndex> cells;
    for (int y = 0; y < slot.canvas.size.height; ++y) {
        for (int x = 0; x < slot.canvas.size.width; ++x) {
            const auto cell = replayed.cells[static_cast<std::size_t>(y) *
                                                 static_cast<std::size_t>(slot.canvas.size.width) +
                                             static_cast<std::size_t>(x)];
            if (x >= slot.size.width || y >= slot.size.height) {
                if (cell) return corrupt("it paints beyond its own grid");
                continue;
            }
            if (!cell && !slot.palette.transparent()) {
                return corrupt("it leaves cell (" + std::to_string(x) + ", " + std::to_string(y) +
                               ") unpainted");
            }
            cells.push_back(cell ? *cell : *slot.palette.transparent());
        }
    }
    return core::Grid::create(slot.size.width, slot.size.height, std::move(cells));
}

Result<core::Grid> replaySlot(const ReadSlot& slot, const core::PointerTiming& timing,
                              std::int64_t& milliseconds) {
    const std::vector<drawing::Report> reports = drawing::reportsOf(slot.plan, slot.canvas, timing);
    PANTILE_ASSIGN_OR_RETURN(const drawing::Replayed replayed,
                             drawing::replay(reports, slot.canvas, timing));
    milliseconds = replayed.milliseconds;
    return paintedGrid(slot, replayed);
}

VerifiedSlot verifySlot(const ReadSlot& slot, const core::PointerTiming& timing) {
    VerifiedSlot verified{slot.title, std::nullopt, 0, slot.bytes, {}};
    auto painted = replaySlot(slot, timing, verified.milliseconds);
    if (!painted) {
        verified.fault = painted.error().message;
        return verified;
    }
    if (core::contentFingerprint(*painted, slot.palette) != slot.fingerprint) {
        verified.fault = "its strokes paint something else than its fingerprint says";
    } else if (verified.milliseconds != slot.foretoldMs) {
        verified.fault = "it takes " + std::to_string(verified.milliseconds) +
                         " ms and foretells " + std::to_string(slot.foretoldMs);
    }
    verified.painted = *std::move(painted);
    return verified;
}

VerifiedSlot verifyPlaced(const PlacedSlot& placed, const core::PointerTiming& timing) {
    const auto slot = readData(placed.data, placed.entry, timing);
    if (slot) return verifySlot(*slot, timing);
    const auto bytes = static_cast<std::int64_t>(layout::kEntryBytes + placed.data.size());
    return {placed.entry.title, std::nullopt, 0, bytes, slot.error().message};
}

}  // namespace

Result<ReadLoad> readLoad(Span bytes) {
    PANTILE_ASSIGN_OR_RETURN(Header header, readHeader(bytes));
    ReadLoad load{header.name, header.timing, {}};
    std::size_t offset = dataStart(header);
    for (std::size_t i = 0; i < header.slots; ++i) {
        PANTILE_ASSIGN_OR_RETURN(const PlacedSlot placed, placeSlot(bytes, i, offset));
        auto slot = readData(placed.data, placed.entry, header.timing);
        if (!slot) return slot.error().at(placed.name);
        load.slots.push_back(*std::move(slot));
    }
    PANTILE_RETURN_IF_ERROR(checkEnd(bytes, offset));
    return load;
}

bool VerifiedLoad::verified() const {
    return std::all_of(slots.begin(), slots.end(),
                       [](const VerifiedSlot& slot) { return slot.verified(); });
}

Result<VerifiedLoad> verifyLoad(Span bytes, const core::Progress& progress) {
    PANTILE_ASSIGN_OR_RETURN(const Header header, readHeader(bytes));
    VerifiedLoad verified{header.name, {}};
    const auto total = static_cast<std::int64_t>(header.slots);
    std::size_t offset = dataStart(header);
    for (std::size_t i = 0; i < header.slots; ++i) {
        if (progress.stopRequested()) {
            return Error{ErrorKind::Cancelled, "verifying the load was stopped", ""};
        }
        PANTILE_ASSIGN_OR_RETURN(const PlacedSlot placed, placeSlot(bytes, i, offset));
        progress.tell(static_cast<std::int64_t>(i), total, placed.entry.title);
        verified.slots.push_back(verifyPlaced(placed, header.timing));
    }
    progress.tell(total, total, "");
    // A damaged slot has told already why the whole is not right.
    if (verified.verified()) PANTILE_RETURN_IF_ERROR(checkEnd(bytes, offset));
    return verified;
}

}  // namespace pantile::board
