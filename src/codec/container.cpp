#include "codec/container.h"

#include <algorithm>
#include <string>
#include <string_view>
#include <utility>

#include "codec/corrupt_code.h"
#include "codec/varint.h"
#include "core/text.h"

namespace pantile::codec {
namespace {

using Bytes = std::vector<std::uint8_t>;
using ByteSpan = std::span<const std::uint8_t>;

// Stored in codes: never change these.
constexpr std::uint8_t kOneTexture = 1;
constexpr std::uint8_t kPaletteFormMask = 0x03;
constexpr std::uint8_t kPaletteInside = 0x00;
constexpr std::uint8_t kPaletteByFingerprint = 0x01;
constexpr std::uint8_t kHasTransparent = 0x04;
constexpr std::uint8_t kHasTitle = 0x08;
constexpr std::uint8_t kHasAuthor = 0x10;
constexpr std::uint8_t kHasLicence = 0x20;
constexpr std::uint8_t kHasTags = 0x40;
constexpr std::uint8_t kKeptFlag = 0x80;

constexpr std::size_t kBytesPerColour = 3;
constexpr std::size_t kFingerprintBytes = 8;
constexpr std::size_t kMaxUtf8Bytes = 4;  // For one character.

core::Error newer(const std::string& what) {
    return {core::ErrorKind::Unsupported, "made by a newer Pantile: " + what,
            "keep the text of the code, and get a newer Pantile to read it"};
}

void appendText(Bytes& bytes, std::string_view text) {
    appendVarint(bytes, static_cast<std::uint32_t>(text.size()));
    bytes.insert(bytes.end(), text.begin(), text.end());
}

void appendPalette(Bytes& bytes, const core::Palette& palette, PaletteForm form) {
    if (form == PaletteForm::ByFingerprint) {
        const std::uint64_t value = palette.fingerprint().value;
        for (int shift = 56; shift >= 0; shift -= 8) {
            bytes.push_back(static_cast<std::uint8_t>(value >> static_cast<unsigned>(shift)));
        }
        return;
    }
    if (palette.transparent()) bytes.push_back(*palette.transparent());
    for (const core::Rgb8 colour : palette.colours()) {
        bytes.insert(bytes.end(), {colour.r, colour.g, colour.b});
    }
}

void appendWords(Bytes& bytes, const core::TextureText& text) {
    for (const std::string& field : {text.title, text.author, text.licence}) {
        if (!field.empty()) appendText(bytes, field);
    }
    if (text.tags.empty()) return;
    appendVarint(bytes, static_cast<std::uint32_t>(text.tags.size()));
    for (const std::string& tag : text.tags) appendText(bytes, tag);
}

std::uint8_t flagsOf(const core::Texture& texture, PaletteForm form) {
    unsigned flags = kPaletteByFingerprint;
    if (form == PaletteForm::Inside) {
        flags = texture.palette().transparent() ? kHasTransparent : kPaletteInside;
    }
    const core::TextureText& text = texture.text();
    if (!text.title.empty()) flags |= kHasTitle;
    if (!text.author.empty()) flags |= kHasAuthor;
    if (!text.licence.empty()) flags |= kHasLicence;
    if (!text.tags.empty()) flags |= kHasTags;
    return static_cast<std::uint8_t>(flags);
}

/// Takes fields off the front of a container; `what` names the field in errors.
class FieldReader {
public:
    explicit FieldReader(ByteSpan bytes) : m_rest(bytes) {}

    ByteSpan rest() const { return m_rest; }

    core::Result<ByteSpan> take(std::size_t count, std::string_view what) {
        if (count > m_rest.size()) return cutIn(what);
        const ByteSpan taken = m_rest.first(count);
        m_rest = m_rest.subspan(count);
        return taken;
    }

    core::Result<std::uint8_t> takeByte(std::string_view what) {
        PANTILE_ASSIGN_OR_RETURN(const ByteSpan byte, take(1, what));
        return byte.front();
    }

    /// A number from 1 to `most`.
    core::Result<std::uint32_t> takeCount(std::size_t most, std::string_view what) {
        const std::optional<std::uint32_t> count = takeVarint(m_rest);
        if (!count) return cutIn(what);
        if (*count >= 1 && *count <= most) return *count;
        return corruptCode("the code says " + std::to_string(*count) + " for the length of its " +
                           std::string(what) + ", which is outside 1 to " + std::to_string(most));
    }

    core::Result<std::string> takeText(std::size_t maxCharacters, std::string_view what) {
        PANTILE_ASSIGN_OR_RETURN(const std::uint32_t size,
                                 takeCount(maxCharacters * kMaxUtf8Bytes, what));
        PANTILE_ASSIGN_OR_RETURN(const ByteSpan bytes, take(size, what));
        return std::string(bytes.begin(), bytes.end());
    }

private:
    static core::Error cutIn(std::string_view what) {
        return corruptCode("the code ends inside its " + std::string(what) +
                           ", or that is malformed");
    }

    ByteSpan m_rest;
};

/// What stands before the grid.
struct Head {
    std::uint8_t flags = 0;
    core::Size size;
    int colours = 0;

    bool has(std::uint8_t flag) const { return (flags & flag) != 0; }
};

core::Result<Head> takeHead(FieldReader& reader) {
    PANTILE_ASSIGN_OR_RETURN(const std::uint8_t form, reader.takeByte("form number"));
    if (form == 0) return corruptCode("the code has the form number 0, which is never used");
    if (form != kOneTexture) {
        return newer("it holds form " + std::to_string(form) + ", which is not known here");
    }
    Head head;
    PANTILE_ASSIGN_OR_RETURN(head.flags, reader.takeByte("flags"));
    if (head.has(kKeptFlag)) return newer("it uses a flag that is not known here");
    const auto paletteForm = static_cast<std::uint8_t>(head.flags & kPaletteFormMask);
    if (paletteForm != kPaletteInside && paletteForm != kPaletteByFingerprint) {
        return newer("its palette is packed in way " + std::to_string(paletteForm) +
                     ", which is not known here");
    }
    PANTILE_ASSIGN_OR_RETURN(const ByteSpan sizes, reader.take(3, "size"));
    head.size = {sizes[0] + 1, sizes[1] + 1};
    head.colours = sizes[2] + 1;
    if (head.colours >= core::kMinPaletteColours) return head;
    return corruptCode("the code says it has 1 colour, and a palette has at least 2");
}

core::Result<core::Palette> takeColours(FieldReader& reader, const Head& head) {
    std::optional<core::PaletteIndex> transparent;
    if (head.has(kHasTransparent)) {
        PANTILE_ASSIGN_OR_RETURN(transparent, reader.takeByte("transparent index"));
    }
    const std::size_t size = kBytesPerColour * static_cast<std::size_t>(head.colours);
    PANTILE_ASSIGN_OR_RETURN(const ByteSpan bytes, reader.take(size, "palette"));
    std::vector<core::Rgb8> colours;
    for (std::size_t i = 0; i < size; i += kBytesPerColour) {
        colours.push_back({bytes[i], bytes[i + 1], bytes[i + 2]});
    }
    core::Result<core::Palette> palette = core::Palette::create(std::move(colours), transparent);
    if (!palette) return corruptCode(palette.error().message);
    return palette;
}

core::Result<core::Fingerprint> takeFingerprint(FieldReader& reader, const Head& head) {
    if (head.has(kHasTransparent)) {
        return corruptCode("the code names a palette, and a transparent index beside it");
    }
    PANTILE_ASSIGN_OR_RETURN(const ByteSpan bytes, reader.take(kFingerprintBytes, "palette"));
    core::Fingerprint fingerprint;
    for (const std::uint8_t byte : bytes) fingerprint.value = fingerprint.value << 8U | byte;
    return fingerprint;
}

core::Result<core::TextureText> takeWords(FieldReader& reader, const Head& head) {
    core::TextureText text;
    if (head.has(kHasTitle)) {
        PANTILE_ASSIGN_OR_RETURN(text.title, reader.takeText(core::kMaxTitleCharacters, "title"));
    }
    if (head.has(kHasAuthor)) {
        PANTILE_ASSIGN_OR_RETURN(text.author,
                                 reader.takeText(core::kMaxAuthorCharacters, "author"));
    }
    if (head.has(kHasLicence)) {
        PANTILE_ASSIGN_OR_RETURN(text.licence,
                                 reader.takeText(core::kMaxLicenceCharacters, "licence"));
    }
    std::size_t tags = 0;
    if (head.has(kHasTags)) {
        PANTILE_ASSIGN_OR_RETURN(tags, reader.takeCount(core::kMaxTags, "tags"));
    }
    for (std::size_t i = 0; i < tags; ++i) {
        PANTILE_ASSIGN_OR_RETURN(std::string tag, reader.takeText(core::kMaxTagCharacters, "tags"));
        if (!text.tags.empty() && tag <= text.tags.back()) {
            return corruptCode("the tags of the code are not in order, or one stands twice");
        }
        text.tags.push_back(std::move(tag));
    }
    const core::Result<void> checked = core::checkTextureText(text);
    if (!checked) return corruptCode(checked.error().message);
    return text;
}

core::Result<core::Palette> foundPalette(core::Fingerprint fingerprint, const Head& head,
                                         const core::TextureText& text,
                                         const PaletteLookup& lookup) {
    PANTILE_ASSIGN_OR_RETURN(core::Palette palette, paletteFor(fingerprint, text.title, lookup));
    if (palette.size() == head.colours) return palette;
    return corruptCode("the code says " + std::to_string(head.colours) +
                       " colours, and the palette " + core::toHex(fingerprint) + " has " +
                       std::to_string(palette.size()));
}

}  // namespace

Container packTexture(const core::Texture& texture, const EncodeOptions& options) {
    const core::Palette& palette = texture.palette();
    const core::Size size = texture.grid().size();
    const GridForm grid = packGrid(texture.grid(), palette.size(), options.method);
    Bytes bytes = {kOneTexture, flagsOf(texture, options.palette)};
    for (const int side : {size.width, size.height, palette.size()}) {
        bytes.push_back(static_cast<std::uint8_t>(side - 1));
    }
    appendPalette(bytes, palette, options.palette);
    appendWords(bytes, texture.text());
    bytes.push_back(static_cast<std::uint8_t>(grid.method));
    bytes.insert(bytes.end(), grid.bytes.begin(), grid.bytes.end());
    return {grid.method, std::move(bytes)};
}

core::Result<core::Texture> unpackTexture(std::span<const std::uint8_t> bytes,
                                          const PaletteLookup& lookup) {
    FieldReader reader(bytes);
    PANTILE_ASSIGN_OR_RETURN(const Head head, takeHead(reader));
    std::optional<core::Palette> palette;
    core::Fingerprint fingerprint;
    if ((head.flags & kPaletteFormMask) == kPaletteInside) {
        PANTILE_ASSIGN_OR_RETURN(palette, takeColours(reader, head));
    } else {
        PANTILE_ASSIGN_OR_RETURN(fingerprint, takeFingerprint(reader, head));
    }
    PANTILE_ASSIGN_OR_RETURN(core::TextureText text, takeWords(reader, head));
    PANTILE_ASSIGN_OR_RETURN(const std::uint8_t method, reader.takeByte("method"));
    PANTILE_ASSIGN_OR_RETURN(core::Grid grid, unpackGrid(static_cast<Method>(method), reader.rest(),
                                                         head.size, head.colours));
    if (!palette) {
        PANTILE_ASSIGN_OR_RETURN(palette, foundPalette(fingerprint, head, text, lookup));
    }
    return core::Texture::create(std::move(grid), std::move(*palette), std::move(text));
}

}  // namespace pantile::codec
