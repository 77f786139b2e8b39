#include "desktop/views/tool_options.h"

#include <algorithm>
#include <array>

#include <QAction>
#include <QGridLayout>
#include <QLabel>
#include <QSpinBox>
#include <QStandardItemModel>

#include "desktop/theme/apply_theme.h"
#include "desktop/views/choice_box.h"
#include "desktop/views/tick_box.h"

namespace pantile::desktop {

namespace {

// In the order of picture::Symmetry.
constexpr std::array kSymmetryWords = {
    QT_TRANSLATE_NOOP("ToolOptions", "none"),
    QT_TRANSLATE_NOOP("ToolOptions", "left and right"),
    QT_TRANSLATE_NOOP("ToolOptions", "top and bottom"),
    QT_TRANSLATE_NOOP("ToolOptions", "fourfold"),
    QT_TRANSLATE_NOOP("ToolOptions", "eightfold"),
};

bool goesByBrush(Tool tool) {
    return tool == Tool::Pen || tool == Tool::Line || tool == Tool::Curve || isShape(tool);
}

}  // namespace

ToolOptions::ToolOptions(const Actions& actions, const Theme& theme, QWidget* parent)
    : QWidget(parent),
      m_brush(new QSpinBox(this)),
      m_round(new TickBox(tr("Round"), theme, this)),
      m_symmetry(new ChoiceBox(theme, this)),
      m_filled(new TickBox(tr("Filled"), theme, this)),
      m_corners(new TickBox(tr("Over corners as well"), theme, this)),
      m_around(new TickBox(tr("Paint around the edges"), theme, this)) {
    setObjectName(QStringLiteral("toolOptions"));
    makeFields();
    connectActions(actions);
    setTool(Tool::Pen);
}

void ToolOptions::makeFields() {
    m_brush->setObjectName(QStringLiteral("brushSize"));
    m_brush->setAccessibleName(tr("Cells across the brush"));
    m_brush->setRange(1, picture::kMaxBrushSize);
    m_brush->setButtonSymbols(QAbstractSpinBox::NoButtons);  // Typed, or by arrow keys.
    m_round->setObjectName(QStringLiteral("roundBrush"));
    m_round->setAccessibleName(tr("Round brush"));
    m_symmetry->setObjectName(QStringLiteral("symmetry"));
    m_symmetry->setAccessibleName(tr("Symmetry"));
    for (const char* const words : kSymmetryWords) m_symmetry->addItem(tr(words));
    m_filled->setObjectName(QStringLiteral("filled"));
    m_corners->setObjectName(QStringLiteral("overCorners"));
    m_around->setObjectName(QStringLiteral("around"));

    auto* const layout = new QGridLayout(this);
    layout->setContentsMargins({});
    layout->setHorizontalSpacing(kGap);
    layout->setVerticalSpacing(kGap);
    layout->setColumnStretch(2, 1);
    layout->addWidget(new QLabel(tr("Brush"), this), 0, 0);
    layout->addWidget(m_brush, 0, 1);
    layout->addWidget(m_round, 0, 2);
    layout->addWidget(new QLabel(tr("Symmetry"), this), 1, 0);
    layout->addWidget(m_symmetry, 1, 1, 1, 2);
    layout->addWidget(m_filled, 2, 0, 1, 1);
    layout->addWidget(m_corners, 2, 1, 1, 2);
    layout->addWidget(m_around, 3, 0, 1, 3);

    connect(m_brush, &QSpinBox::valueChanged, this, &ToolOptions::changed);
    connect(m_symmetry, &QComboBox::currentIndexChanged, this, &ToolOptions::changed);
    for (const TickBox* box : {m_round, m_filled, m_corners, m_around})
        connect(box, &QAbstractButton::toggled, this, &ToolOptions::changed);
}

void ToolOptions::connectActions(const Actions& actions) {
    connect(&actions[ActionId::Thicker], &QAction::triggered, m_brush, &QSpinBox::stepUp);
    connect(&actions[ActionId::Thinner], &QAction::triggered, m_brush, &QSpinBox::stepDown);
    connect(&actions[ActionId::NextSymmetry], &QAction::triggered, this, [this] {
        const auto isOffered = [this](int i) {
            return (m_symmetry->model()->index(i, 0).flags() & Qt::ItemIsEnabled) != 0;
        };
        const int next = (m_symmetry->currentIndex() + 1) % m_symmetry->count();
        m_symmetry->setCurrentIndex(isOffered(next) ? next : 0);
    });
    QAction& around = actions[ActionId::PaintAround];
    connect(&around, &QAction::toggled, m_around, &QAbstractButton::setChecked);
    connect(m_around, &QAbstractButton::toggled, &around, &QAction::setChecked);
}

ToolSettings ToolOptions::applied(ToolSettings settings) const {
    using picture::BrushShape;
    settings.brush = {m_brush->value(),
                      m_round->isChecked() ? BrushShape::Round : BrushShape::Square};
    settings.symmetry = static_cast<picture::Symmetry>(std::max(m_symmetry->currentIndex(), 0));
    settings.interior = m_filled->isChecked() ? tasks::Interior::Filled : tasks::Interior::Empty;
    settings.neighbours =
        m_corners->isChecked() ? picture::Neighbours::Eight : picture::Neighbours::Four;
    settings.wraps = m_around->isChecked();
    return settings;
}

void ToolOptions::setTool(Tool tool) {
    m_brush->setEnabled(goesByBrush(tool));
    m_round->setEnabled(goesByBrush(tool));
    m_symmetry->setEnabled(tool != Tool::Gradient && tool != Tool::Crop);
    m_filled->setEnabled(isShape(tool));
    m_corners->setEnabled(tool == Tool::Fill);
}

void ToolOptions::setSize(core::Size size) {
    const int eight = static_cast<int>(picture::Symmetry::Eight);
    const bool isSquare = size.width == size.height;
    static_cast<QStandardItemModel*>(m_symmetry->model())->item(eight)->setEnabled(isSquare);
    if (!isSquare && m_symmetry->currentIndex() == eight) m_symmetry->setCurrentIndex(eight - 1);
}

}  // namespace pantile::desktop
