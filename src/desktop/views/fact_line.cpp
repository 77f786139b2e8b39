#include "desktop/views/fact_line.h"

#include <QHBoxLayout>
#include <QLabel>

#include "desktop/theme/apply_theme.h"
#include "desktop/views/plain_label.h"

namespace pantile::desktop {

FactLine::FactLine(const char* name, const QString& label, QWidget* parent)
    : QWidget(parent), m_value(new PlainLabel(this)) {
    setObjectName(QLatin1String("fact_") + QLatin1String(name));
    auto* const line = new QHBoxLayout(this);
    line->setContentsMargins({});
    line->setSpacing(kGap);
    auto* const what = new QLabel(label, this);
    what->setForegroundRole(QPalette::PlaceholderText);
    // As wide as the longest of them, so that the values stand in one column.
    what->setFixedWidth(fontMetrics().averageCharWidth() * 12);
    line->addWidget(what, 0, Qt::AlignTop);
    m_value->setObjectName(QLatin1String(name));
    m_value->setAccessibleName(label);
    line->addWidget(m_value, 1);
}

void FactLine::setValue(const QString& value) {
    m_value->setText(value);
    m_value->setAccessibleDescription(value);
    setVisible(!value.isEmpty());
}

}  // namespace pantile::desktop
