#include "desktop/views/number_slider.h"

#include <QHBoxLayout>
#include <QSlider>
#include <QSpinBox>

#include "desktop/theme/apply_theme.h"

namespace pantile::desktop {

NumberSlider::NumberSlider(const char* name, const QString& label, Range range, QWidget* parent)
    : QWidget(parent), m_slider(new QSlider(Qt::Horizontal, this)), m_number(new QSpinBox(this)) {
    m_number->setObjectName(QLatin1String(name));
    m_slider->setObjectName(QLatin1String(name) + QStringLiteral("Slider"));
    m_number->setAccessibleName(label);
    m_slider->setAccessibleName(label);
    m_number->setButtonSymbols(QAbstractSpinBox::NoButtons);
    m_number->setRange(range.least, range.most);
    m_slider->setRange(range.least, range.most);
    m_number->setSingleStep(range.step);
    m_slider->setSingleStep(range.step);
    m_number->setValue(range.usual);
    m_slider->setValue(range.usual);
    m_number->setFixedWidth(9 * kGap);
    m_number->setKeyboardTracking(true);
    auto* const line = new QHBoxLayout(this);
    line->setContentsMargins({});
    line->setSpacing(kGap);
    line->addWidget(m_slider, 1);
    line->addWidget(m_number);
    setFocusProxy(m_slider);
    connect(m_slider, &QSlider::valueChanged, m_number, &QSpinBox::setValue);
    connect(m_number, &QSpinBox::valueChanged, m_slider, &QSlider::setValue);
    connect(m_number, &QSpinBox::valueChanged, this, &NumberSlider::changed);
}

int NumberSlider::value() const {
    return m_number->value();
}

void NumberSlider::setValue(int value) {
    m_number->setValue(value);
}

void NumberSlider::setLeastWords(const QString& words) {
    m_number->setSpecialValueText(words);
}

void NumberSlider::setSuffix(const QString& suffix) {
    m_number->setSuffix(suffix);
}

}  // namespace pantile::desktop
