#include "desktop/views/dither_strip.h"

#include <array>

#include <QButtonGroup>
#include <QCoreApplication>
#include <QHBoxLayout>
#include <QToolButton>

#include "desktop/texts.h"
#include "desktop/theme/apply_theme.h"

namespace pantile::desktop {

namespace {

constexpr int kSampleSide = 64;

// In the order of picture::Dither.
constexpr std::array kDitherNames = {
    QT_TRANSLATE_NOOP("dithers", "None"),       QT_TRANSLATE_NOOP("dithers", "Floyd-Steinberg"),
    QT_TRANSLATE_NOOP("dithers", "Jarvis"),     QT_TRANSLATE_NOOP("dithers", "Stucki"),
    QT_TRANSLATE_NOOP("dithers", "Atkinson"),   QT_TRANSLATE_NOOP("dithers", "Sierra"),
    QT_TRANSLATE_NOOP("dithers", "Burkes"),     QT_TRANSLATE_NOOP("dithers", "Bayer 2"),
    QT_TRANSLATE_NOOP("dithers", "Bayer 4"),    QT_TRANSLATE_NOOP("dithers", "Bayer 8"),
    QT_TRANSLATE_NOOP("dithers", "Blue noise"), QT_TRANSLATE_NOOP("dithers", "Optimal"),
};

QString nameOf(std::size_t index) {
    return QCoreApplication::translate("dithers", kDitherNames.at(index));
}

}  // namespace

DitherStrip::DitherStrip(const Theme& theme, QWidget* parent)
    : QScrollArea(parent), m_group(new QButtonGroup(this)), m_hatch(hatchOf(theme)) {
    setObjectName(QStringLiteral("ditherStrip"));
    setAccessibleName(tr("Dithers"));
    setFocusPolicy(Qt::NoFocus);
    setWidgetResizable(true);
    setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    auto* const row = new QWidget(this);
    auto* const line = new QHBoxLayout(row);
    line->setContentsMargins(0, 0, 0, kGap / 2);
    line->setSpacing(kGap / 2);
    for (std::size_t i = 0; i < kDitherNames.size(); ++i) {
        auto* const button = new QToolButton(row);
        button->setObjectName(QStringLiteral("dither%1").arg(i));
        button->setToolButtonStyle(Qt::ToolButtonTextUnderIcon);
        button->setIconSize({kSampleSide, kSampleSide});
        button->setFont(figureFont());
        button->setText(nameOf(i) + QLatin1Char('\n'));
        button->setAccessibleName(nameOf(i));
        button->setCheckable(true);
        button->setFocusPolicy(Qt::StrongFocus);
        m_group->addButton(button, static_cast<int>(i));
        m_buttons.push_back(button);
        line->addWidget(button);
    }
    line->addStretch();
    m_buttons.front()->setChecked(true);
    setWidget(row);
    // The icon, two lines, the buttons' edges and the scroll bar.
    setFixedHeight(kSampleSide + 2 * QFontMetrics(figureFont()).lineSpacing() + 6 * kGap);
    connect(m_group, &QButtonGroup::idToggled, this, [this](int id, bool checked) {
        if (!checked) return;
        ensureWidgetVisible(m_buttons[static_cast<std::size_t>(id)]);
        Q_EMIT picked();
    });
}

picture::Dither DitherStrip::dither() const {
    return static_cast<picture::Dither>(m_group->checkedId());
}

void DitherStrip::showSamples(const std::vector<DitherSample>& samples) {
    const double pixelRatio = devicePixelRatioF();
    for (std::size_t i = 0; i < std::min(samples.size(), m_buttons.size()); ++i) {
        const DitherSample& sample = samples[i];
        if (!sample.texture) continue;
        QImage image = cellPicture(*sample.texture, static_cast<int>(kSampleSide * pixelRatio),
                                   Repeat::Once, m_hatch);
        image.setDevicePixelRatio(pixelRatio);
        m_buttons[i]->setIcon(QIcon(QPixmap::fromImage(image)));
        if (!sample.estimate) continue;
        const QString cost = shownDuration(sample.estimate->drawMs);
        m_buttons[i]->setText(nameOf(i) + QLatin1Char('\n') + cost);
        m_buttons[i]->setToolTip(shownCost(sample.estimate));
        m_buttons[i]->setAccessibleDescription(shownCost(sample.estimate));
    }
}

}  // namespace pantile::desktop
