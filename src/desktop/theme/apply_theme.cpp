#include "desktop/theme/apply_theme.h"

#include <utility>
#include <vector>

#include <QApplication>
#include <QPalette>
#include <QString>
#include <QStyleFactory>

namespace pantile::desktop {

namespace {

constexpr double kHeadingScale = 1.4;
constexpr double kFigureScale = 0.88;

QFont scaledFont(double scale) {
    QFont font = QApplication::font();
    font.setPointSizeF(font.pointSizeF() * scale);
    return font;
}

QPalette paletteOf(const Theme& t) {
    QPalette palette;
    const std::vector<std::pair<QPalette::ColorRole, core::Rgb8>> roles = {
        {QPalette::Window, t.ground},       {QPalette::WindowText, t.text},
        {QPalette::Base, t.field},          {QPalette::AlternateBase, t.bench},
        {QPalette::Text, t.text},           {QPalette::Button, t.bench},
        {QPalette::ButtonText, t.text},     {QPalette::ToolTipBase, t.field},
        {QPalette::ToolTipText, t.text},    {QPalette::PlaceholderText, t.quietText},
        {QPalette::Highlight, t.selection}, {QPalette::HighlightedText, t.text},
        {QPalette::Link, t.structure},      {QPalette::LinkVisited, t.structure},
        {QPalette::Light, t.field},         {QPalette::Midlight, t.bench},
        {QPalette::Mid, t.hairline},        {QPalette::Dark, t.edge},
        {QPalette::Shadow, t.edge},         {QPalette::BrightText, t.text},
    };
    for (const auto& [role, colour] : roles) palette.setColor(role, toQColor(colour));
    for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText})
        palette.setColor(QPalette::Disabled, role, toQColor(t.edge));
    return palette;
}

// The parts that the palette does not reach. @name stands for a colour of the theme. A line edit
// gets no text colour here, as that would make its placeholder paler than the theme allows.
const char* const kSheet = R"(
QPushButton { color: @text; background: @ground; border: 1px solid @edge; border-radius: 4px;
              padding: 5px 14px; min-height: 20px; }
QPushButton:hover { background: @hover; }
QPushButton:pressed, QPushButton:checked { background: @selection; }
QPushButton:checked { border: 2px solid @structure; padding: 4px 13px; }
QPushButton:focus { border: 2px solid @structure; padding: 4px 13px; }
QPushButton:disabled { color: @edge; border-color: @hairline; }
QPushButton[next="true"] { color: @onNext; background: @next; border: 2px solid @next;
                           padding: 4px 13px; font-weight: bold; }
QPushButton[next="true"]:hover, QPushButton[next="true"]:pressed { background: @nextPressed; }
QPushButton[next="true"]:focus { border: 2px solid @text; }
QPushButton[next="true"]:disabled { color: @edge; background: @ground; border-color: @hairline; }
QLineEdit, QComboBox { background: @field; border: 1px solid @edge;
                       border-radius: 4px; padding: 5px 8px; min-height: 20px;
                       selection-background-color: @selection; selection-color: @text; }
QLineEdit:focus, QComboBox:focus { border: 2px solid @structure; padding: 4px 7px; }
QComboBox::drop-down { border: none; width: 24px; }
QComboBox QAbstractItemView { color: @text; background: @field; border: 1px solid @edge;
                              selection-background-color: @selection; selection-color: @text; }
QListView, QScrollArea, QPlainTextEdit { border: none; background: @ground; }
#rail { background: @bench; border-right: 1px solid @hairline; }
#rail QPushButton { background: transparent; border: none; border-left: 4px solid @bench;
                    border-radius: 0; padding: 10px 18px 10px 14px; text-align: left; }
#rail QPushButton:hover { background: @hover; }
#rail QPushButton:checked { background: @selection; border-left: 4px solid @structure;
                            font-weight: bold; }
#rail QPushButton:focus { border: 2px solid @structure; padding: 8px 16px 8px 12px;
                          border-left: 4px solid @structure; padding-left: 14px; }
QSpinBox { background: @field; border: 1px solid @edge; border-radius: 4px; padding: 5px 8px;
           min-height: 20px; selection-background-color: @selection; selection-color: @text; }
QSpinBox:focus { border: 2px solid @structure; padding: 4px 7px; }
QSlider { min-height: 24px; }
QTreeWidget { border: none; background: @bench; padding: 8px; outline: none; }
QTreeWidget::item { background: transparent; padding: 3px 4px; }
QTreeWidget::item:hover { background: @hover; }
QTreeWidget::item:selected { color: @text; background: @selection; }
QSlider::groove:horizontal { background: @edge; height: 2px; }
QSlider::handle:horizontal { background: @field; border: 2px solid @structure; border-radius: 4px;
                             width: 8px; margin: -8px 0; }
QSlider::handle:horizontal:hover { background: @hover; }
QSlider::handle:horizontal:focus { background: @structure; }
QToolButton { color: @text; background: @ground; border: 1px solid @ground; border-radius: 4px;
              padding: 4px; }
QToolButton:hover { background: @hover; }
QToolButton:checked { background: @selection; border: 2px solid @structure; padding: 3px; }
QToolButton:focus { border: 2px solid @text; padding: 3px; }
#post, #pastedText, #wordsNote { background: @field; border: 1px solid @edge; border-radius: 4px; }
#post:focus, #pastedText:focus, #wordsNote:focus { border: 2px solid @structure; }
#searchCompletions { color: @text; background: @field; border: 1px solid @edge; }
#searchCompletions::item { padding: 4px 8px; }
#searchCompletions::item:selected { color: @text; background: @selection; }
QListWidget { border: none; background: @ground; }
QListWidget::item { background: transparent; padding: 4px; }
QListWidget::item:selected { color: @text; background: @selection; }
#loadTray { background: @ground; border-top: 1px solid @hairline; }
#leftOut, #written { background: @field; border: 1px solid @edge; border-radius: 4px; }
#leftOut:focus, #written:focus { border: 2px solid @structure; }
#detailPane, #editBench, #bench, #noticeBar, #noticeLines { background: @bench; }
QPlainTextEdit:focus, QTableView:focus, QTreeWidget:focus { border: 2px solid @structure; }
QSplitter::handle { background: @hairline; }
QProgressBar { background: @selection; border: none; border-radius: 3px; max-height: 6px; }
QProgressBar::chunk { background: @structure; border-radius: 3px; }
QMenuBar { color: @text; background: @ground; padding: 2px 8px; }
QMenuBar::item { padding: 4px 8px; background: transparent; }
QMenuBar::item:selected { background: @selection; }
QMenu { color: @text; background: @field; border: 1px solid @edge; padding: 4px 0; }
QMenu::item { padding: 5px 28px 5px 24px; }
QMenu::item:selected { background: @selection; }
QMenu::item:disabled { color: @edge; }
QMenu::separator { height: 1px; background: @hairline; margin: 4px 0; }
QToolTip { color: @text; background: @field; border: 1px solid @edge; padding: 4px; }
QScrollBar { background: transparent; }
QScrollBar:vertical { width: 12px; }
QScrollBar:horizontal { height: 12px; }
QScrollBar::handle { background: @edge; border-radius: 4px; margin: 2px; min-height: 32px;
                     min-width: 32px; }
QScrollBar::add-line, QScrollBar::sub-line { width: 0; height: 0; }
QScrollBar::add-page, QScrollBar::sub-page { background: transparent; }
)";

QString sheetOf(const Theme& t) {
    // Longer names first, so that none is taken for the beginning of another.
    const std::vector<std::pair<const char*, core::Rgb8>> names = {
        {"@nextPressed", t.nextPressed},
        {"@selection", t.selection},
        {"@structure", t.structure},
        {"@hairline", t.hairline},
        {"@onNext", t.onNext},
        {"@bench", t.bench},
        {"@ground", t.ground},
        {"@field", t.field},
        {"@hover", t.hover},
        {"@edge", t.edge},
        {"@next", t.next},
        {"@text", t.text},
    };
    QString sheet = QString::fromLatin1(kSheet);
    for (const auto& [name, colour] : names)
        sheet.replace(QLatin1String(name), toQColor(colour).name());
    return sheet;
}

}  // namespace

QColor toQColor(core::Rgb8 colour) {
    return {colour.r, colour.g, colour.b};
}

Shade platformShade() {
    const QPalette palette = QGuiApplication::palette();
    const auto lightness = [&](QPalette::ColorRole role) {
        return palette.color(role).lightness();
    };
    return lightness(QPalette::Window) < lightness(QPalette::WindowText) ? Shade::Dark
                                                                         : Shade::Light;
}

void applyTheme(QApplication& application, const Theme& theme) {
    QApplication::setStyle(QStyleFactory::create(QStringLiteral("Fusion")));
    QApplication::setPalette(paletteOf(theme));
    application.setStyleSheet(sheetOf(theme));
}

QFont headingFont() {
    QFont font = scaledFont(kHeadingScale);
    font.setWeight(QFont::DemiBold);
    return font;
}

QFont figureFont() {
    return scaledFont(kFigureScale);
}

}  // namespace pantile::desktop
