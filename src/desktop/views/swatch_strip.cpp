#include "desktop/views/swatch_strip.h"

#include <algorithm>

#include <QHelpEvent>
#include <QPainter>
#include <QResizeEvent>
#include <QStringList>
#include <QToolTip>

#include "desktop/texts.h"
#include "desktop/theme/apply_theme.h"
#include "desktop/views/painted_parts.h"

namespace pantile::desktop {

namespace {

constexpr int kSmallSquare = 16;  // For palettes of more than so many colours:
constexpr std::size_t kFewColours = 64;
constexpr int kSquare = 24;

}  // namespace

SwatchStrip::SwatchStrip(const Theme& theme, QWidget* parent) : QWidget(parent), m_theme(theme) {
    setObjectName(QStringLiteral("palette"));
    QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Minimum);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
}

void SwatchStrip::setTexture(const core::Texture& texture) {
    m_palette = texture.palette();
    m_used.assign(m_palette->colours().size(), false);
    for (const core::PaletteIndex index : texture.grid().cells()) m_used[index] = true;
    QStringList all;
    for (std::size_t i = 0; i < m_used.size(); ++i) all.append(words(i));
    setAccessibleName(tr("Palette of %n colours", nullptr, m_palette->size()));
    setAccessibleDescription(all.join(QStringLiteral("; ")));
    updateGeometry();
    update();
}

int SwatchStrip::heightForWidth(int width) const {
    if (!m_palette) return 0;
    const int across = columns(width);
    const int size = m_used.size() > kFewColours ? kSmallSquare : kSquare;
    return (m_palette->size() + across - 1) / across * size;
}

QSize SwatchStrip::sizeHint() const {
    constexpr int kUsualColumns = 8;
    const int usual = kUsualColumns * kSquare;
    return {usual, heightForWidth(std::max(width(), usual))};
}

bool SwatchStrip::event(QEvent* event) {
    if (event->type() != QEvent::ToolTip) return QWidget::event(event);
    const auto* const help = static_cast<QHelpEvent*>(event);
    for (std::size_t i = 0; i < m_used.size(); ++i) {
        if (!square(i).contains(help->pos())) continue;
        QToolTip::showText(help->globalPos(), words(i), this);
        return true;
    }
    QToolTip::hideText();
    return true;
}

void SwatchStrip::resizeEvent(QResizeEvent* event) {
    // The height that it needs depends on the width.
    if (event->size().width() != event->oldSize().width()) updateGeometry();
}

void SwatchStrip::paintEvent(QPaintEvent* /*event*/) {
    QPainter painter(this);
    for (std::size_t i = 0; i < m_used.size(); ++i) {
        QRect place = square(i).adjusted(0, 0, -2, -2);
        if (!m_used[i]) place.setTop(place.top() + place.height() / 2);
        const bool isUnpainted = m_palette->transparent() == i;
        fillSwatch(painter, place,
                   isUnpainted ? std::nullopt : std::optional(m_palette->colours()[i]), m_theme,
                   m_theme.quietText);
        // A swatch of the window's own colour must not vanish in it.
        painter.setPen(toQColor(m_theme.edge));
        painter.drawRect(place.adjusted(0, 0, -1, -1));
    }
}

int SwatchStrip::columns(int width) const {
    // Fours, so that the rows of usual palettes end alike.
    const int size = m_used.size() > kFewColours ? kSmallSquare : kSquare;
    return std::max(width / size / 4 * 4, 4);
}

QRect SwatchStrip::square(std::size_t index) const {
    const int size = m_used.size() > kFewColours ? kSmallSquare : kSquare;
    const int across = columns(width());
    const int at = static_cast<int>(index);
    return {at % across * size, at / across * size, size, size};
}

QString SwatchStrip::words(std::size_t index) const {
    const QString colour = m_palette->transparent() == index
                               ? tr("left unpainted")
                               : fromUtf8(core::toHex(m_palette->colours()[index]));
    const QString text = QString::number(index) + QStringLiteral(": ") + colour;
    return m_used[index] ? text : text + tr(" (no cell has it)");
}

}  // namespace pantile::desktop
