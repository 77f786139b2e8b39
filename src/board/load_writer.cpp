#include "board/load_writer.h"

#include <string>
#include <string_view>

#include "board/load_layout.h"
#include "board/stroke_script.h"
#include "core/counted.h"
#include "core/text.h"
#include "core/texture.h"

namespace pantile::board {
namespace {

using core::Error;
using core::ErrorKind;
using core::Result;
using Bytes = std::vector<std::uint8_t>;

class ByteWriter {
public:
    void u8(std::int64_t value) { m_bytes.push_back(static_cast<std::uint8_t>(value)); }

    void u16(std::int64_t value) { little(static_cast<std::uint64_t>(value), 2); }

    void u32(std::int64_t value) { little(static_cast<std::uint64_t>(value), 4); }

    void u64(std::uint64_t value) { little(value, 8); }

    void bytes(std::span<const std::uint8_t> more) {
        m_bytes.insert(m_bytes.end(), more.begin(), more.end());
    }

    /// `text`, cut to whole characters and filled up with zero bytes.
    void text(std::string_view text, std::size_t size) {
        std::size_t length = std::min(text.size(), size);
        // Bytes 10xxxxxx continue a character; a cut never stands before one.
        while (length > 0 && length < text.size() &&
               (static_cast<unsigned char>(text[length]) & 0xC0U) == 0x80U) {
            --length;
        }
        m_bytes.insert(m_bytes.end(), text.begin(),
                       text.begin() + static_cast<std::ptrdiff_t>(length));
        m_bytes.resize(m_bytes.size() + size - length, 0);
    }

    void checksum() { u32(layout::checksumOf(m_bytes)); }

    std::size_t size() const { return m_bytes.size(); }

    Bytes take() && { return std::move(m_bytes); }

private:
    void little(std::uint64_t value, int count) {
        for (int i = 0; i < count; ++i)
            m_bytes.push_back(static_cast<std::uint8_t>(value >> 8 * i));
    }

    Bytes m_bytes;
};

Error slotError(std::size_t slot, const std::string& title, const Error& error) {
    return error.at("slot " + std::to_string(slot + 1) + " (" + core::excerpt(title) + ")");
}

Result<void> checkPicture(const LoadSlot& slot) {
    if (!slot.picture) return {};
    if (slot.picture->width() > layout::kMaxPictureSide ||
        slot.picture->height() > layout::kMaxPictureSide) {
        return Error{ErrorKind::DoesNotFit,
                     "a small picture of " + std::to_string(slot.picture->width()) + " x " +
                         std::to_string(slot.picture->height()) + " cells is too large",
                     "make it at most " + std::to_string(layout::kMaxPictureSide) + " on a side"};
    }
    if (slot.picture->largestIndex() < slot.palette.size()) return {};
    return Error{ErrorKind::InvalidInput, "the small picture uses colours outside the palette",
                 "make it from the texture"};
}

Result<void> checkSlot(const LoadSlot& slot) {
    const core::Grid& grid = slot.grid;
    PANTILE_RETURN_IF_ERROR(core::checkText(slot.title, {"title", core::kMaxTitleCharacters}));
    PANTILE_RETURN_IF_ERROR(core::checkCanvas(slot.canvas));
    if (grid.width() > slot.canvas.size.width || grid.height() > slot.canvas.size.height) {
        return Error{ErrorKind::DoesNotFit,
                     "a grid of " + std::to_string(grid.width()) + " x " +
                         std::to_string(grid.height()) + " cells is larger than its canvas of " +
                         std::to_string(slot.canvas.size.width) + " x " +
                         std::to_string(slot.canvas.size.height),
                     "choose a larger canvas"};
    }
    if (grid.largestIndex() >= slot.palette.size()) {
        return Error{ErrorKind::InvalidInput,
                     "a cell has index " + std::to_string(grid.largestIndex()) +
                         ", and the palette has " + std::to_string(slot.palette.size()) +
                         " colours",
                     "use a palette with more colours"};
    }
    PANTILE_RETURN_IF_ERROR(checkPicture(slot));
    if (slot.plan.milliseconds < 0 || slot.plan.milliseconds > 0xFFFFFFFF) {
        return Error{ErrorKind::InvalidInput,
                     "a drawing of " + std::to_string(slot.plan.milliseconds) +
                         " ms is outside what a load can state",
                     "plan the texture anew"};
    }
    if (slot.plan.fill &&
        (*slot.plan.fill >= slot.palette.size() || !slot.canvas.geometry.fillButton)) {
        return Error{ErrorKind::InvalidInput,
                     "its plan fills with a colour or on a canvas that cannot be filled with",
                     "plan the texture anew"};
    }
    return {};
}

/// Palette, small picture, fill and script. Errors: as checkSlot and encodeScript.
Result<Bytes> slotData(const LoadSlot& slot) {
    PANTILE_RETURN_IF_ERROR(checkSlot(slot));
    // How far a report may jump is the timing's matter; here it counts whether the pen can.
    const int longestJump = slot.canvas.penJumps() ? core::kMaxGridSide : 0;
    PANTILE_ASSIGN_OR_RETURN(
        const Bytes script,
        encodeScript(slot.plan.strokes,
                     {slot.grid.size(), slot.palette.size(), slot.canvas.penModel,
                      slot.canvas.rules.turns, longestJump}));
    ByteWriter writer;
    for (const core::Rgb8 colour : slot.palette.colours()) {
        writer.u8(colour.r);
        writer.u8(colour.g);
        writer.u8(colour.b);
    }
    if (slot.picture) writer.bytes(slot.picture->cells());
    if (slot.plan.fill) {
        writer.u8(*slot.plan.fill);
        writer.u16(slot.canvas.geometry.fillButton->x);
        writer.u16(slot.canvas.geometry.fillButton->y);
    }
    writer.bytes(script);
    return std::move(writer).take();
}

/// The pen model, its rules, and whether the canvas is filled first.
std::uint8_t penByte(const LoadSlot& slot) {
    const core::PenRules& rules = slot.canvas.rules;
    int bits = static_cast<int>(slot.canvas.penModel);
    if (!rules.turns) bits |= layout::kNoTurns;
    if (!rules.covers) bits |= layout::kNoCovering;
    if (rules.leaving == core::PenLeaving::Undone) bits |= layout::kUndoneOutside;
    if (slot.plan.fill) bits |= layout::kFills;
    return static_cast<std::uint8_t>(bits);
}

Bytes directoryEntry(const LoadSlot& slot, const Bytes& data, std::size_t offset) {
    const core::CanvasGeometry& geometry = slot.canvas.geometry;
    ByteWriter writer;
    writer.u32(static_cast<std::int64_t>(offset));
    writer.u32(static_cast<std::int64_t>(data.size()));
    writer.u32(layout::checksumOf(data));
    writer.u32(slot.plan.milliseconds);
    writer.u64(core::contentFingerprint(slot.grid, slot.palette).value);
    writer.u8(slot.grid.width() - 1);
    writer.u8(slot.grid.height() - 1);
    writer.u8(slot.canvas.size.width - 1);
    writer.u8(slot.canvas.size.height - 1);
    writer.u8(slot.palette.size() - 1);
    writer.u8(slot.palette.transparent() ? 1 : 0);
    writer.u8(slot.palette.transparent().value_or(0));
    writer.u8(penByte(slot));
    writer.u16(geometry.gridCentre.x);
    writer.u16(geometry.gridCentre.y);
    writer.u16(geometry.swatchCentre.x);
    writer.u16(geometry.swatchCentre.y);
    writer.u8(geometry.cellPitch);
    writer.u8(geometry.swatchPitch);
    writer.u8(geometry.swatchesPerColumn - 1);
    writer.u8(layout::kScriptEncoding);
    writer.u8(slot.picture ? slot.picture->width() : 0);
    writer.u8(slot.picture ? slot.picture->height() : 0);
    writer.text(slot.title, layout::kTitleBytes);
    writer.checksum();
    return std::move(writer).take();
}

Bytes header(const Load& load, std::size_t totalBytes) {
    const core::PointerTiming& timing = load.timing;
    ByteWriter writer;
    writer.bytes(layout::kMagic);
    writer.u8(layout::kVersion);
    writer.u8(layout::kHeaderBytes);
    writer.u8(static_cast<std::int64_t>(load.slots.size()));
    writer.u8(layout::kEntryBytes);
    writer.u32(static_cast<std::int64_t>(totalBytes));
    writer.u16(timing.reportIntervalMs);
    writer.u8(timing.maxStepUp);
    writer.u8(timing.maxStepDown);
    writer.u16(timing.pressMs);
    writer.u16(timing.releaseMs);
    writer.u16(timing.settleMs);
    writer.u16((layout::kCornerCounts + timing.maxStepUp - 1) / timing.maxStepUp);
    writer.u32(0);
    writer.text(load.name, layout::kNameBytes);
    writer.checksum();
    return std::move(writer).take();
}

Result<void> checkFits(std::size_t slots, std::size_t bytes, const core::Board& board) {
    if (slots > static_cast<std::size_t>(board.slots)) {
        return Error{ErrorKind::DoesNotFit,
                     "the load has " + std::to_string(slots) + " textures, and the board " +
                         core::excerpt(board.name) + " has " +
                         core::counted(board.slots, "slot", "slots"),
                     "leave some out, or split them over several loads"};
    }
    if (bytes > static_cast<std::size_t>(board.bytes)) {
        return Error{ErrorKind::DoesNotFit,
                     "the load takes " + std::to_string(bytes) + " bytes, and the board " +
                         core::excerpt(board.name) + " has " + std::to_string(board.bytes),
                     "leave some out, or split them over several loads"};
    }
    return {};
}

}  // namespace

std::int64_t loadBaseBytes() {
    return layout::kBaseBytes;
}

Result<std::int64_t> slotBytes(const LoadSlot& slot) {
    PANTILE_ASSIGN_OR_RETURN(const Bytes data, slotData(slot));
    return static_cast<std::int64_t>(layout::kEntryBytes + data.size());
}

Result<Bytes> writeLoad(const Load& load, const core::Board& board) {
    PANTILE_RETURN_IF_ERROR(core::checkBoard(board));
    PANTILE_RETURN_IF_ERROR(core::checkTiming(load.timing));
    PANTILE_RETURN_IF_ERROR(core::checkName("load name", load.name));
    if (load.slots.empty()) {
        return Error{ErrorKind::InvalidInput, "a load without textures cannot be written",
                     "choose at least one texture"};
    }
    PANTILE_RETURN_IF_ERROR(checkFits(load.slots.size(), 0, board));

    std::vector<Bytes> data;
    std::size_t total = layout::kBaseBytes + layout::kEntryBytes * load.slots.size();
    for (std::size_t i = 0; i < load.slots.size(); ++i) {
        auto slot = slotData(load.slots[i]);
        if (!slot) return slotError(i, load.slots[i].title, slot.error());
        total += slot->size();
        data.push_back(*std::move(slot));
    }
    PANTILE_RETURN_IF_ERROR(checkFits(load.slots.size(), total, board));

    ByteWriter writer;
    writer.bytes(header(load, total));
    std::size_t offset = layout::kHeaderBytes + layout::kEntryBytes * load.slots.size();
    for (std::size_t i = 0; i < load.slots.size(); ++i) {
        writer.bytes(directoryEntry(load.slots[i], data[i], offset));
        offset += data[i].size();
    }
    for (const Bytes& slot : data) writer.bytes(slot);
    writer.checksum();
    return std::move(writer).take();
}

}  // namespace pantile::board
