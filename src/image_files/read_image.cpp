#include "image_files/read_image.h"

#include <cstddef>
#include <fstream>
#include <string>
#include <system_error>
#include <vector>

#include <QBuffer>
#include <QByteArray>
#include <QColorTransform>
#include <QImage>
#include <QImageReader>

#include "core/text.h"
#include "image_files/colour_profile.h"
#include "image_files/completeness.h"
#include "image_files/exif_orientation.h"
#include "image_files/image_kind.h"
#include "image_files/jpeg_planes.h"
#include "image_files/png_chunks.h"
#include "image_files/png_table.h"
#include "image_files/svg_check.h"

namespace pantile::image_files {
namespace {

using core::Error;
using core::ErrorKind;
using core::Result;

constexpr const char* kFormatsHint = "use a PNG, JPEG, GIF, BMP, WebP or SVG picture";
constexpr const char* kSmallerHint = "scale the picture down before adding it";
constexpr const char* kAgainHint = "get the picture again from where it came";

std::string inQuotes(std::string_view name) {
    return "'" + core::visibleText(name) + "'";
}

Error notAPicture(std::string_view name) {
    return {ErrorKind::Unsupported, inQuotes(name) + " is not a picture that Pantile can read",
            kFormatsHint};
}

Error emptyFile(std::string_view name) {
    return {ErrorKind::Corrupt, inQuotes(name) + " is empty", kAgainHint};
}

Error damaged(std::string_view name) {
    return {ErrorKind::Corrupt, inQuotes(name) + " is cut short or damaged", kAgainHint};
}

Error tooManyBytes(std::string_view name) {
    return {ErrorKind::TooLarge,
            inQuotes(name) + " has more than " + std::to_string(kMaxImageFileBytes >> 20U) +
                " MiB, the limit for a picture file",
            kSmallerHint};
}

Error unreadable(std::string_view name) {
    return {ErrorKind::Io, inQuotes(name) + " cannot be read", "check that you may read the file"};
}

Result<void> checkImageSize(const QSize& size, std::string_view name) {
    if (size.width() < 1 || size.height() < 1) return damaged(name);
    const std::int64_t pixels = std::int64_t{size.width()} * size.height();
    if (size.width() <= kMaxImageSide && size.height() <= kMaxImageSide &&
        pixels <= kMaxImagePixels)
        return {};
    return Error{ErrorKind::TooLarge,
                 inQuotes(name) + " is " + std::to_string(size.width()) + "x" +
                     std::to_string(size.height()) + " pixels, above the limit of " +
                     std::to_string(kMaxImageSide) + " a side and " +
                     std::to_string(kMaxImagePixels >> 20U) + " megapixels",
                 kSmallerHint};
}

// The library for PNG writes its own words to standard error where a header is wrong.
Result<void> checkPngHeader(std::span<const std::uint8_t> bytes, std::string_view name) {
    const std::optional<core::Size> size = pngSize(bytes);
    if (!size) return damaged(name);
    return checkImageSize({size->width, size->height}, name);
}

// Qt's own guard for formats that do not tell their size early. It is one value for the process.
void limitDecoderMemory() {
    constexpr int kMegabytes = 8 * static_cast<int>(kMaxImagePixels >> 20U);  // 16-bit RGBA
    static const bool kDone = [] {
        QImageReader::setAllocationLimit(kMegabytes);
        return true;
    }();
    static_cast<void>(kDone);
}

Result<void> setDrawnSize(QImageReader& reader, const QSize& announced, std::string_view name) {
    if (announced.width() < 1 || announced.height() < 1) return damaged(name);
    const QSize drawn = announced.scaled(kSvgSide, kSvgSide, Qt::KeepAspectRatio);
    reader.setScaledSize(drawn.expandedTo({1, 1}));
    return {};
}

// A form that Qt can apply a transform to: greys and tables become colours of their own.
QImage inWholeColours(QImage image) {
    const bool hasMore = image.depth() > 32 || image.format() == QImage::Format_Grayscale16;
    return std::move(image).convertToFormat(hasMore ? QImage::Format_RGBA64
                                                    : QImage::Format_ARGB32);
}

core::Rgba8 mapped(const QColorTransform& transform, const core::Rgba8& colour) {
    const QRgb result = transform.map(qRgba(colour.r, colour.g, colour.b, colour.a));
    return {static_cast<std::uint8_t>(qRed(result)), static_cast<std::uint8_t>(qGreen(result)),
            static_cast<std::uint8_t>(qBlue(result)), colour.a};
}

core::Pixels pixelsOf(const QImage& image) {
    const QImage rgba = image.convertToFormat(QImage::Format_RGBA8888);
    core::Pixels pixels{{rgba.width(), rgba.height()}, {}};
    pixels.pixels.reserve(static_cast<std::size_t>(rgba.width()) *
                          static_cast<std::size_t>(rgba.height()));
    for (int y = 0; y < rgba.height(); ++y) {
        const uchar* row = rgba.constScanLine(y);
        for (int x = 0; x < rgba.width(); ++x, row += 4)
            pixels.pixels.push_back({row[0], row[1], row[2], row[3]});
    }
    return pixels;
}

bool storesIndices(ImageKind kind, std::span<const std::uint8_t> bytes, const QImage& image) {
    const bool decodedToTable = image.format() == QImage::Format_Indexed8 ||
                                image.format() == QImage::Format_Mono ||
                                image.format() == QImage::Format_MonoLSB;
    return decodedToTable && (kind == ImageKind::Bmp || isIndexedPng(bytes));
}

std::uint8_t indexAt(const QImage& image, const uchar* row, int x) {
    if (image.format() == QImage::Format_Indexed8) return row[x];
    const auto bit = static_cast<unsigned>(x) % 8;
    const unsigned mask = image.format() == QImage::Format_Mono ? 0x80U >> bit : 1U << bit;
    return (row[x / 8] & mask) != 0 ? 1 : 0;
}

std::vector<std::uint8_t> indicesOf(const QImage& image) {
    std::vector<std::uint8_t> indices;
    indices.reserve(static_cast<std::size_t>(image.width()) *
                    static_cast<std::size_t>(image.height()));
    for (int y = 0; y < image.height(); ++y) {
        const uchar* row = image.constScanLine(y);
        for (int x = 0; x < image.width(); ++x) indices.push_back(indexAt(image, row, x));
    }
    return indices;
}

std::vector<core::Rgba8> tableOf(const QImage& image) {
    std::vector<core::Rgba8> table;
    for (const QRgb entry : image.colorTable()) {
        table.push_back(
            {static_cast<std::uint8_t>(qRed(entry)), static_cast<std::uint8_t>(qGreen(entry)),
             static_cast<std::uint8_t>(qBlue(entry)), static_cast<std::uint8_t>(qAlpha(entry))});
    }
    return table;
}

core::IndexedPixels indexedPixelsOf(ImageKind kind, std::span<const std::uint8_t> bytes,
                                    const QImage& image) {
    core::IndexedPixels indexed{kind == ImageKind::Png ? pngTable(bytes) : tableOf(image),
                                indicesOf(image)};
    if (indexed.table.empty()) indexed.table.emplace_back();
    // An index beyond the table is an error in the file. Qt's decoder makes it 0 in most cases; it
    // is done here for the others.
    for (std::uint8_t& index : indexed.indices) {
        if (index >= indexed.table.size()) index = 0;
    }
    return indexed;
}

// From the indices rather than from Qt, so that both forms agree whatever the file holds.
core::Pixels pixelsOf(const core::IndexedPixels& indexed, core::Size size) {
    core::Pixels pixels{size, {}};
    pixels.pixels.reserve(indexed.indices.size());
    for (const std::uint8_t index : indexed.indices) pixels.pixels.push_back(indexed.table[index]);
    return pixels;
}

Error readerError(const QImageReader& reader, std::string_view name) {
    if (reader.error() != QImageReader::UnsupportedFormatError) return damaged(name);
    const std::string_view package =
        reader.format() == "svg" ? "libqt6svg6" : "qt6-image-formats-plugins";
    return {ErrorKind::Unsupported,
            inQuotes(name) + " is a " + reader.format().toUpper().toStdString() +
                " picture, which this installation cannot read",
            "install Qt's reader for that format (Debian: " + std::string(package) +
                "), or use a PNG picture"};
}

Result<std::vector<std::uint8_t>> readBytes(const std::filesystem::path& path,
                                            std::string_view name) {
    std::ifstream file(path, std::ios::binary);
    if (!file) return unreadable(name);
    std::vector<std::uint8_t> bytes;
    std::vector<char> block(std::size_t{1} << 16U);
    // Block by block with a limit: a size asked for beforehand can be wrong by now.
    while (file.read(block.data(), static_cast<std::streamsize>(block.size())), file.gcount() > 0) {
        bytes.insert(bytes.end(), block.begin(), block.begin() + file.gcount());
        if (bytes.size() > kMaxImageFileBytes) return tooManyBytes(name);
    }
    if (file.bad()) return unreadable(name);
    return bytes;
}

}  // namespace

Result<core::Picture> readImageFile(const std::filesystem::path& path) {
    const std::string name = path.string();
    std::error_code failure;
    const std::filesystem::file_status status = std::filesystem::status(path, failure);
    if (status.type() == std::filesystem::file_type::not_found)
        return Error{ErrorKind::NotFound, "there is no file " + inQuotes(name),
                     "check the path's spelling"};
    if (failure) return unreadable(name);
    if (status.type() == std::filesystem::file_type::directory)
        return Error{ErrorKind::Unsupported, inQuotes(name) + " is a folder, not a picture",
                     "name a picture in it"};
    // A pipe or a device could keep us waiting for ever.
    if (status.type() != std::filesystem::file_type::regular) return notAPicture(name);
    const std::uintmax_t fileBytes = std::filesystem::file_size(path, failure);
    if (!failure && fileBytes > kMaxImageFileBytes) return tooManyBytes(name);
    PANTILE_ASSIGN_OR_RETURN(const std::vector<std::uint8_t> bytes, readBytes(path, name));
    return readImageBytes(bytes, name);
}

Result<core::Picture> readImageBytes(std::span<const std::uint8_t> bytes, std::string_view name) {
    if (bytes.empty()) return emptyFile(name);
    if (bytes.size() > kMaxImageFileBytes) return tooManyBytes(name);
    const std::optional<ImageKind> kind = imageKindOf(bytes);
    if (!kind) return notAPicture(name);
    if (!isWhole(*kind, bytes)) return damaged(name);
    if (*kind == ImageKind::Svg) PANTILE_RETURN_IF_ERROR(checkSvg(bytes, name));
    if (*kind == ImageKind::Png) PANTILE_RETURN_IF_ERROR(checkPngHeader(bytes, name));

    limitDecoderMemory();
    QByteArray raw = QByteArray::fromRawData(reinterpret_cast<const char*>(bytes.data()),
                                             static_cast<qsizetype>(bytes.size()));
    QBuffer buffer(&raw);
    buffer.open(QIODevice::ReadOnly);
    QImageReader reader(&buffer, qtFormatName(*kind));
    reader.setAutoDetectImageFormat(false);
    reader.setAutoTransform(true);
    if (!reader.canRead()) return readerError(reader, name);
    const QSize announced = reader.size();
    if (*kind == ImageKind::Svg) {
        PANTILE_RETURN_IF_ERROR(setDrawnSize(reader, announced, name));
    } else if (announced.isValid()) {
        PANTILE_RETURN_IF_ERROR(checkImageSize(announced, name));
    }
    QImage image = reader.read();
    if (image.isNull()) return readerError(reader, name);
    PANTILE_RETURN_IF_ERROR(checkImageSize(image.size(), name));

    // Qt's readers have learnt to turn one format after the other: what they did is not done again.
    const bool turnedByQt = reader.transformation() != QImageIOHandler::TransformationNone;
    const int orientation = turnedByQt ? 1 : exifOrientation(*kind, bytes);
    const QColorTransform toSrgb = transformToSrgb(*kind, bytes, image);
    if (!storesIndices(*kind, bytes, image)) {
        if (!toSrgb.isIdentity()) image = inWholeColours(std::move(image));
        image.applyColorTransform(toSrgb);
        core::Picture picture{pixelsOf(image), std::nullopt};
        if (*kind == ImageKind::Jpeg && toSrgb.isIdentity() && !turnedByQt)
            picture.planes = readJpegPlanes(bytes);
        return turnedUpright(std::move(picture), orientation);
    }
    core::IndexedPixels indexed = indexedPixelsOf(*kind, bytes, image);
    for (core::Rgba8& entry : indexed.table) entry = mapped(toSrgb, entry);
    core::Pixels pixels = pixelsOf(indexed, {image.width(), image.height()});
    return turnedUpright({std::move(pixels), std::move(indexed)}, orientation);
}

}  // namespace pantile::image_files
