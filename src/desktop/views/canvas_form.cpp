#include "desktop/views/canvas_form.h"

#include <QLineEdit>

#include "desktop/texts.h"
#include "desktop/views/choice_box.h"
#include "desktop/views/tick_box.h"

namespace pantile::desktop {

using core::Canvas;
using core::Result;

CanvasForm::CanvasForm(const Theme& theme, QWidget* parent) : CheckedForm(theme, parent) {
    setObjectName(QStringLiteral("canvasForm"));
    m_name = addLine("canvasName", tr("Name"));
    makeGridPart();
    makeColourPart();
    makePenPart();
    makeScreenPart();
    connect(this, &CheckedForm::changed, this, &CanvasForm::check);
}

void CanvasForm::makeGridPart() {
    addHeading(tr("Grid"));
    std::tie(m_width, m_height) =
        addPair("canvasCells", tr("Cells"), {1, core::kMaxGridSide, {}}, QString(QChar(0x00D7)));
}

void CanvasForm::makeColourPart() {
    addHeading(tr("Colours"));
    m_palette = addChoice("canvasPalette", tr("Palette"));
    m_colours = addNumber("canvasColours", tr("Free colours"),
                          {core::kMinPaletteColours, core::kMaxPaletteColours, {}});
}

void CanvasForm::makePenPart() {
    addHeading(tr("Pen"));
    m_pen = addChoice("canvasPen", tr("A move paints"));
    m_pen->addItems({tr("all cells, straight steps"), tr("all cells, diagonals too"),
                     tr("straight lines, any length"), tr("only where reports land")});
    m_leaving = addChoice("canvasLeaving", tr("Outside"));
    m_leaving->addItems({tr("not known: never go there"), tr("takes the stroke back")});
    m_turns = addTick("canvasTurns", tr("A stroke may turn corners"));
    m_covers = addTick("canvasCovers", tr("A colour may be painted over another"));
}

// Places are those of middles, as the pointer aims at them.
void CanvasForm::makeScreenPart() {
    addHeading(tr("On the screen, in counts"));
    const NumberRange place{0, core::kMaxCounts, {}};
    const NumberRange pitch{1, core::kMaxPitch, {}};
    std::tie(m_gridX, m_gridY) =
        addPair("canvasGridAt", tr("First cell at"), place, QStringLiteral(","));
    m_pitch = addNumber("canvasPitch", tr("Cell to cell"), pitch);
    std::tie(m_barX, m_barY) =
        addPair("canvasBarAt", tr("First swatch at"), place, QStringLiteral(","));
    m_swatchPitch = addNumber("canvasSwatchPitch", tr("Swatch to swatch"), pitch);
    m_perColumn =
        addNumber("canvasPerColumn", tr("Swatches a column"), {1, core::kMaxPaletteColours, {}});
    m_fill = addTick("canvasFill", tr("A button fills the whole canvas"));
    std::tie(m_fillX, m_fillY) =
        addPair("canvasFillAt", tr("The button at"), place, QStringLiteral(","));
}

// A canvas may have a palette without a name, or one whose name stands for others by now.
void CanvasForm::fillPalettes(const Canvas& canvas) {
    m_palette->clear();
    m_palettes.clear();
    m_palette->addItem(tr("The maker's own colours"));
    int chosen = 0;
    for (const catalogue::NamedPalette& each : m_known.palettes()) {
        m_palette->addItem(counted("CanvasForm", "Fixed: %2, %1 colour", "Fixed: %2, %1 colours",
                                   each.palette.size())
                               .arg(shownText(each.name)));
        m_palettes.push_back(each.palette);
        if (chosen == 0 && canvas.palette == each.palette) chosen = m_palette->count() - 1;
    }
    if (canvas.palette && chosen == 0) {
        m_palette->addItem(tr("Fixed: %1 colours without a name").arg(canvas.palette->size()));
        m_palettes.push_back(*canvas.palette);
        chosen = m_palette->count() - 1;
    }
    m_palette->setCurrentIndex(chosen);
}

void CanvasForm::showCanvas(const Canvas& canvas, const ProfileKey& own, const Profiles& known) {
    {
        const Silence silence(*this);
        m_own = own;
        m_known = known;
        const core::CanvasGeometry& g = canvas.geometry;
        m_name->setText(fromUtf8(canvas.name));
        m_width->setValue(canvas.size.width);
        m_height->setValue(canvas.size.height);
        fillPalettes(canvas);
        m_colours->setValue(canvas.freeColours);
        m_pen->setCurrentIndex(static_cast<int>(canvas.penModel));
        m_turns->setChecked(canvas.rules.turns);
        m_covers->setChecked(canvas.rules.covers);
        m_leaving->setCurrentIndex(static_cast<int>(canvas.rules.leaving));
        m_gridX->setValue(g.gridCentre.x);
        m_gridY->setValue(g.gridCentre.y);
        m_pitch->setValue(g.cellPitch);
        m_barX->setValue(g.swatchCentre.x);
        m_barY->setValue(g.swatchCentre.y);
        m_swatchPitch->setValue(g.swatchPitch);
        m_perColumn->setValue(g.swatchesPerColumn);
        m_fill->setChecked(g.fillButton.has_value());
        m_fillX->setValue(g.fillButton.value_or(core::Point{}).x);
        m_fillY->setValue(g.fillButton.value_or(core::Point{}).y);
    }
    check();
}

Canvas CanvasForm::canvas() const {
    Canvas canvas;
    canvas.name = m_name->text().toStdString();
    canvas.size = {m_width->value(), m_height->value()};
    if (m_palette->currentIndex() > 0)
        canvas.palette = m_palettes[static_cast<std::size_t>(m_palette->currentIndex() - 1)];
    canvas.freeColours = m_colours->value();
    canvas.penModel = static_cast<core::PenModel>(m_pen->currentIndex());
    canvas.rules = {m_turns->isChecked(), m_covers->isChecked(),
                    static_cast<core::PenLeaving>(m_leaving->currentIndex())};
    core::CanvasGeometry& g = canvas.geometry;
    g.gridCentre = {m_gridX->value(), m_gridY->value()};
    g.cellPitch = m_pitch->value();
    g.swatchCentre = {m_barX->value(), m_barY->value()};
    g.swatchPitch = m_swatchPitch->value();
    g.swatchesPerColumn = m_perColumn->value();
    if (m_fill->isChecked()) g.fillButton = core::Point{m_fillX->value(), m_fillY->value()};
    return canvas;
}

void CanvasForm::setKnown(const ProfileKey& own, const Profiles& known) {
    m_own = own;
    m_known = known;
    check();
}

void CanvasForm::check() {
    const Canvas now = canvas();
    const bool isFree = !now.palette.has_value();
    const bool hasButton = m_fill->isChecked();
    m_colours->setEnabled(isFree);
    m_fillX->parentWidget()->setEnabled(hasButton);
    const auto both = [](const Result<void>& one, const Result<void>& other) {
        return one ? other : one;
    };
    const Result<void> fine;
    const auto numbers = [&](NumberField* one, std::string_view oneIs, NumberField* other,
                             std::string_view otherIs) {
        const Result<void> checked = both(one->check(oneIs), other->check(otherIs));
        setError(one->parentWidget(), checked);
        return checked.has_value();
    };
    const auto number = [&](NumberField* field, std::string_view what) {
        const Result<void> checked = field->check(what);
        setError(field, checked);
        return checked.has_value();
    };
    Canvas onlyName;
    onlyName.size = {1, 1};
    onlyName.name = now.name;
    setError(m_name, checkProfile(onlyName, m_own, m_known));
    bool isRight = numbers(m_width, "the width", m_height, "the height");
    setError(m_colours, isFree ? m_colours->check("the number of free colours") : fine);
    isRight &= numbers(m_gridX, "the grid's left", m_gridY, "the grid's top");
    isRight &= number(m_pitch, "the cell pitch");
    isRight &= numbers(m_barX, "the palette bar's left", m_barY, "the palette bar's top");
    isRight &= number(m_swatchPitch, "the swatch pitch");
    isRight &= number(m_perColumn, "the swatches in a column");
    if (hasButton) {
        isRight &= numbers(m_fillX, "the fill button's left", m_fillY, "the fill button's top");
    } else {
        setError(m_fillX->parentWidget(), fine);
    }
    // Only what is in range can lie on something.
    const bool isFreeRight = !isFree || m_colours->check("").has_value();
    if (isRight && isFreeRight && hasButton)
        setError(m_fillX->parentWidget(), core::checkUnnamedCanvas(now));
}

}  // namespace pantile::desktop
