#pragma once

// JPEG files in forms that Qt's writer cannot be asked for.

#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <jpeglib.h>
#include <vector>

#include <QImage>

namespace pantile::image_files {

struct JpegForm {
    int pixelsAcross = 1;  ///< of a chroma sample
    int pixelsDown = 1;
    bool progressive = false;
};

inline std::vector<std::uint8_t> writtenByLibjpeg(const QImage& image, const JpegForm& form) {
    constexpr int kQuality = 85;
    jpeg_compress_struct encoder{};
    jpeg_error_mgr errors{};
    encoder.err = jpeg_std_error(&errors);
    jpeg_create_compress(&encoder);
    unsigned char* memory = nullptr;
    unsigned long size = 0;
    jpeg_mem_dest(&encoder, &memory, &size);
    const QImage rgb = image.convertToFormat(QImage::Format_RGB888);
    encoder.image_width = static_cast<JDIMENSION>(rgb.width());
    encoder.image_height = static_cast<JDIMENSION>(rgb.height());
    encoder.input_components = 3;
    encoder.in_color_space = JCS_RGB;
    jpeg_set_defaults(&encoder);
    jpeg_set_quality(&encoder, kQuality, TRUE);
    encoder.comp_info[0].h_samp_factor = form.pixelsAcross;
    encoder.comp_info[0].v_samp_factor = form.pixelsDown;
    if (form.progressive) jpeg_simple_progression(&encoder);
    jpeg_start_compress(&encoder, TRUE);
    for (int y = 0; y < rgb.height(); ++y) {
        std::vector<JSAMPLE> row(rgb.constScanLine(y), rgb.constScanLine(y) + 3 * rgb.width());
        JSAMPROW rows = row.data();
        jpeg_write_scanlines(&encoder, &rows, 1);
    }
    jpeg_finish_compress(&encoder);
    jpeg_destroy_compress(&encoder);
    std::vector<std::uint8_t> bytes(memory, memory + size);
    std::free(memory);
    return bytes;
}

}  // namespace pantile::image_files
