#include "image_files/jpeg_planes.h"

#include <algorithm>
#include <csetjmp>
#include <cstddef>
#include <cstdio>
#include <jpeglib.h>

namespace pantile::image_files {
namespace {

// The library's errors must come back by a jump; `manager` is first so that it finds the rest.
struct ErrorHandler {
    jpeg_error_mgr manager;
    std::jmp_buf back;
};

[[noreturn]] void jumpBack(j_common_ptr decoder) {
    std::longjmp(reinterpret_cast<ErrorHandler*>(decoder->err)->back, 1);
}

// Warnings are of damage: what a file is guessed to say is not what it says.
void refuseWarnings(j_common_ptr decoder, int level) {
    if (level < 0) jumpBack(decoder);
}

// Whether a sample is the mean of one pixel or of two.
bool isPlainOrHalf(int most, int own) {
    return own == most || 2 * own == most;
}

bool isUsable(const jpeg_decompress_struct& decoder) {
    if (decoder.image_width > kMaxPlanesSide || decoder.image_height > kMaxPlanesSide) return false;
    if (decoder.jpeg_color_space != JCS_YCbCr || decoder.num_components != 3) return false;
    if (decoder.data_precision != 8) return false;
    const jpeg_component_info* const channels = decoder.comp_info;
    return channels[0].h_samp_factor == decoder.max_h_samp_factor &&
           channels[0].v_samp_factor == decoder.max_v_samp_factor &&
           std::all_of(channels, channels + 3, [&](const jpeg_component_info& channel) {
               return isPlainOrHalf(decoder.max_h_samp_factor, channel.h_samp_factor) &&
                      isPlainOrHalf(decoder.max_v_samp_factor, channel.v_samp_factor);
           });
}

bool fillPlane(jpeg_decompress_struct& decoder, jvirt_barray_ptr blocks,
               const jpeg_component_info& channel, core::CoefficientPlane& plane) {
    if (channel.quant_table == nullptr) return false;
    plane.pixelsAcross = decoder.max_h_samp_factor / channel.h_samp_factor;
    plane.pixelsDown = decoder.max_v_samp_factor / channel.v_samp_factor;
    plane.blocks = {static_cast<int>(channel.width_in_blocks),
                    static_cast<int>(channel.height_in_blocks)};
    std::copy_n(channel.quant_table->quantval, core::kBlockCoefficients, plane.steps.begin());
    for (JDIMENSION row = 0; row < channel.height_in_blocks; ++row) {
        JBLOCKARRAY line = decoder.mem->access_virt_barray(reinterpret_cast<j_common_ptr>(&decoder),
                                                           blocks, row, 1, FALSE);
        for (JDIMENSION column = 0; column < channel.width_in_blocks; ++column)
            plane.coefficients.insert(plane.coefficients.end(), line[0][column],
                                      line[0][column] + core::kBlockCoefficients);
    }
    return true;
}

bool fillPlanes(jpeg_decompress_struct& decoder, std::span<const std::uint8_t> bytes,
                core::CoefficientPlanes& planes) {
    jpeg_mem_src(&decoder, bytes.data(), static_cast<unsigned long>(bytes.size()));
    jpeg_read_header(&decoder, TRUE);
    if (!isUsable(decoder)) return false;
    planes.size = {static_cast<int>(decoder.image_width), static_cast<int>(decoder.image_height)};
    jvirt_barray_ptr* const blocks = jpeg_read_coefficients(&decoder);
    for (std::size_t i = 0; i < planes.channels.size(); ++i) {
        if (!fillPlane(decoder, blocks[i], decoder.comp_info[i], planes.channels.at(i)))
            return false;
    }
    return true;
}

// Nothing here or in what it calls has a destructor, which the jump would pass over.
bool fillPlanesOrFail(std::span<const std::uint8_t> bytes, core::CoefficientPlanes& planes) {
    jpeg_decompress_struct decoder{};
    ErrorHandler handler{};
    decoder.err = jpeg_std_error(&handler.manager);
    handler.manager.error_exit = jumpBack;
    handler.manager.emit_message = refuseWarnings;
    // NOLINTNEXTLINE(cert-err52-cpp): the library knows no other way.
    if (setjmp(handler.back) != 0) {
        jpeg_destroy_decompress(&decoder);
        return false;
    }
    jpeg_create_decompress(&decoder);
    const bool filled = fillPlanes(decoder, bytes, planes);
    jpeg_destroy_decompress(&decoder);
    return filled;
}

}  // namespace

std::optional<core::CoefficientPlanes> readJpegPlanes(std::span<const std::uint8_t> bytes) {
    core::CoefficientPlanes planes;
    if (!fillPlanesOrFail(bytes, planes)) return std::nullopt;
    return planes;
}

}  // namespace pantile::image_files
