#include "desktop/views/plain_label.h"

#include <cmath>

#include <QPainter>
#include <QTextLayout>

namespace pantile::desktop {

namespace {

constexpr double kLeading = 2;

// Lays the paragraphs out below one another, hands each to `each` with its top, gives the height.
template <typename Each>
double layOut(const QString& text, const QFont& font, double width, const Each& each) {
    QTextOption option;
    option.setWrapMode(QTextOption::WrapAtWordBoundaryOrAnywhere);
    double top = 0;
    for (const QString& paragraph : text.split(QLatin1Char('\n'))) {
        QTextLayout layout(paragraph, font);
        layout.setTextOption(option);
        layout.beginLayout();
        double height = 0;
        for (QTextLine line = layout.createLine(); line.isValid(); line = layout.createLine()) {
            line.setLineWidth(width);
            line.setPosition({0, height});
            height += line.height() + kLeading;
        }
        layout.endLayout();
        each(layout, top);
        top += height;
    }
    return top;
}

}  // namespace

PlainLabel::PlainLabel(QWidget* parent) : QLabel(parent) {
    setTextFormat(Qt::PlainText);
    QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Minimum);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
}

QSize PlainLabel::sizeHint() const {
    constexpr int kUsualCharacters = 24;
    const int width = fontMetrics().averageCharWidth() * kUsualCharacters;
    return {width, fontMetrics().height()};
}

QSize PlainLabel::minimumSizeHint() const {
    constexpr int kLeastCharacters = 8;
    return {fontMetrics().averageCharWidth() * kLeastCharacters, fontMetrics().height()};
}

int PlainLabel::heightForWidth(int width) const {
    return static_cast<int>(
        std::ceil(layOut(text(), font(), width, [](const QTextLayout&, double) {})));
}

void PlainLabel::paintEvent(QPaintEvent* /*event*/) {
    QPainter painter(this);
    painter.setPen(palette().color(foregroundRole()));
    layOut(text(), font(), width(), [&](const QTextLayout& layout, double top) {
        layout.draw(&painter, {0, top});
    });
}

}  // namespace pantile::desktop
