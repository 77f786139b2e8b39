#include "image_files/slot_sheet.h"

#include <algorithm>

#include <QBuffer>
#include <QFontInfo>
#include <QFontMetricsF>
#include <QGuiApplication>
#include <QImage>
#include <QPageSize>
#include <QPainter>
#include <QPdfWriter>

namespace pantile::image_files {
namespace {

using core::Error;
using core::ErrorKind;
using core::Result;

constexpr int kDotsPerInch = 300;
constexpr double kMarginMm = 15;
constexpr double kGapMm = 6;
constexpr int kColumns = 3;
constexpr int kRows = 4;
constexpr double kPictureMm = 32;
constexpr double kCardMm = 57;
constexpr double kHeadingMm = 20;
constexpr double kHeadingPoints = 18;
constexpr double kTitlePoints = 10;
constexpr double kTextPoints = 8.5;

double dots(double millimetres) {
    return millimetres * kDotsPerInch / 25.4;
}

QString shown(const std::string& text) {
    return QString::fromStdString(text);
}

QFont fontOf(double points, bool bold = false) {
    QFont font(QStringLiteral("DejaVu Sans"));
    font.setPointSizeF(points);
    font.setBold(bold);
    return font;
}

QImage imageOf(const core::Pixels& pixels) {
    QImage image(pixels.size.width, pixels.size.height, QImage::Format_ARGB32);
    for (int y = 0; y < pixels.size.height; ++y) {
        for (int x = 0; x < pixels.size.width; ++x) {
            const core::Rgba8& pixel = pixels.at(x, y);
            image.setPixel(x, y, qRgba(pixel.r, pixel.g, pixel.b, pixel.a));
        }
    }
    return image;
}

/// Draws line below line, each cut at the width.
class Column {
public:
    Column(QPainter& painter, QRectF area) : m_painter(&painter), m_area(area) {}

    void line(const QString& text, const QFont& font) {
        m_painter->setFont(font);
        const QFontMetricsF metrics(font, m_painter->device());
        m_painter->drawText(QRectF(m_area.left(), m_area.top(), m_area.width(), metrics.height()),
                            Qt::AlignLeft | Qt::TextSingleLine,
                            metrics.elidedText(text, Qt::ElideRight, m_area.width()));
        m_area.setTop(m_area.top() + metrics.height());
    }

    /// As many lines as the text needs.
    void paragraph(const QString& text, const QFont& font) {
        m_painter->setFont(font);
        const QRectF used = m_painter->boundingRect(m_area, Qt::TextWordWrap, text);
        m_painter->drawText(m_area, Qt::TextWordWrap, text);
        m_area.setTop(m_area.top() + used.height());
    }

    void skip(double millimetres) { m_area.setTop(m_area.top() + dots(millimetres)); }

private:
    QPainter* m_painter;
    QRectF m_area;
};

class Sheet {
public:
    Sheet(const SlotSheet& sheet, QPdfWriter& writer) : m_sheet(sheet), m_writer(&writer) {}

    bool paint() {
        QPainter painter;
        if (!painter.begin(m_writer)) return false;
        painter.setRenderHint(QPainter::LosslessImageRendering);  // Else cells become JPEG.
        m_width = m_writer->width();
        m_height = m_writer->height();
        double end = 0;
        for (std::size_t slot = 0; slot < m_sheet.slots.size(); ++slot) {
            const int place = static_cast<int>(slot) % (kColumns * kRows);
            if (place == 0) {
                if (slot > 0) m_writer->newPage();
                heading(painter);
            }
            end = card(painter, slot, place);
        }
        cautions(painter, end);
        return painter.end();
    }

private:
    void heading(QPainter& painter) const {
        Column column(painter, QRectF(0, 0, m_width, dots(kHeadingMm)));
        column.line(shown(m_sheet.heading), fontOf(kHeadingPoints, true));
        column.line(shown(m_sheet.below), fontOf(kTextPoints));
    }

    /// Returns where the card's row ends.
    double card(QPainter& painter, std::size_t slot, int place) const {
        const double width = (m_width - (kColumns - 1) * dots(kGapMm)) / kColumns;
        const double left = place % kColumns * (width + dots(kGapMm));
        const double top = dots(kHeadingMm) + place / kColumns * dots(kCardMm);
        const SheetSlot& shownSlot = m_sheet.slots[slot];
        picture(painter, shownSlot.picture, {left, top});
        Column column(painter, QRectF(left, top + dots(kPictureMm + 1), width, dots(kCardMm)));
        column.line(QString::number(slot + 1) + QStringLiteral("  ") + shown(shownSlot.title),
                    fontOf(kTitlePoints, true));
        for (const std::string& fact : shownSlot.facts)
            column.line(shown(fact), fontOf(kTextPoints));
        return top + dots(kCardMm);
    }

    /// At whole dots a cell, so that cells stay square; enlarged here, as a viewer may blur.
    static void picture(QPainter& painter, const core::Pixels& pixels, QPointF at) {
        const int longer = std::max(pixels.size.width, pixels.size.height);
        const int factor = std::max(1, static_cast<int>(dots(kPictureMm)) / longer);
        const QImage image =
            imageOf(pixels).scaled(pixels.size.width * factor, pixels.size.height * factor);
        painter.fillRect(QRectF(at, image.size()), QBrush(QColor(190, 190, 190), Qt::BDiagPattern));
        painter.drawImage(at, image);
    }

    /// Below the last row if there is room for them as a whole, else on a page of their own.
    void cautions(QPainter& painter, double from) const {
        if (m_sheet.cautions.empty()) return;
        constexpr double kNeededMm = 62;
        if (from + dots(kNeededMm) > m_height) {
            m_writer->newPage();
            from = 0;
        }
        Column column(painter, QRectF(0, from, m_width, m_height - from));
        column.line(shown(m_sheet.cautionHeading), fontOf(kTitlePoints, true));
        column.skip(1);
        for (const std::string& caution : m_sheet.cautions) {
            column.paragraph(shown(caution), fontOf(kTextPoints));
            column.skip(1);
        }
    }

    const SlotSheet& m_sheet;
    QPdfWriter* m_writer;
    double m_width = 0;
    double m_height = 0;
};

}  // namespace

Result<std::vector<std::uint8_t>> slotSheetPdf(const SlotSheet& sheet) {
    if (sheet.slots.empty()) {
        return Error{ErrorKind::InvalidInput, "there is no slot to print",
                     "fill the load with textures first"};
    }
    if (qobject_cast<QGuiApplication*>(QCoreApplication::instance()) == nullptr) {
        return Error{ErrorKind::Internal, "no fonts are ready to print with",
                     "please report this: it is a fault of Pantile"};
    }
    if (QFontInfo(fontOf(kHeadingPoints)).family().isEmpty()) {
        return Error{ErrorKind::Unsupported, "this machine has no fonts to print with",
                     "install some (on Debian fonts-dejavu-core)"};
    }
    QBuffer buffer;
    buffer.open(QIODevice::WriteOnly);
    QPdfWriter writer(&buffer);
    writer.setResolution(kDotsPerInch);
    writer.setPageSize(QPageSize(QPageSize::A4));
    writer.setPageMargins(QMarginsF(kMarginMm, kMarginMm, kMarginMm, kMarginMm),
                          QPageLayout::Millimeter);
    writer.setTitle(shown(sheet.heading));
    writer.setCreator(QStringLiteral("Pantile"));
    if (!Sheet(sheet, writer).paint())
        return Error{ErrorKind::Io, "the page could not be drawn", "please report this"};
    const QByteArray& bytes = buffer.data();
    return std::vector<std::uint8_t>(bytes.begin(), bytes.end());
}

}  // namespace pantile::image_files
