#pragma once

#include "core/canvas.h"
#include "desktop/models/profile.h"
#include "desktop/views/checked_form.h"

namespace pantile::desktop {

/// All that is said of a canvas, checked as it is typed.
class CanvasForm : public CheckedForm {
    Q_OBJECT

public:
    /// The theme must outlive it.
    CanvasForm(const Theme& theme, QWidget* parent);

    /// `canvas` may be one that is not right yet. `own` is what the library calls it.
    void showCanvas(const core::Canvas& canvas, const ProfileKey& own, const Profiles& known);

    /// Other names or another own one; what was typed stays.
    void setKnown(const ProfileKey& own, const Profiles& known);

    /// As it stands in the fields, right or not.
    core::Canvas canvas() const;

private:
    void makeGridPart();
    void makeColourPart();
    void makePenPart();
    void makeScreenPart();
    void fillPalettes(const core::Canvas& canvas);
    void check();

    ProfileKey m_own;
    Profiles m_known;
    std::vector<core::Palette> m_palettes;  ///< From the second choice on.
    QLineEdit* m_name = nullptr;
    NumberField* m_width = nullptr;
    NumberField* m_height = nullptr;
    ChoiceBox* m_palette = nullptr;
    NumberField* m_colours = nullptr;
    ChoiceBox* m_pen = nullptr;
    TickBox* m_turns = nullptr;
    TickBox* m_covers = nullptr;
    ChoiceBox* m_leaving = nullptr;
    NumberField* m_gridX = nullptr;
    NumberField* m_gridY = nullptr;
    NumberField* m_pitch = nullptr;
    NumberField* m_barX = nullptr;
    NumberField* m_barY = nullptr;
    NumberField* m_swatchPitch = nullptr;
    NumberField* m_perColumn = nullptr;
    TickBox* m_fill = nullptr;
    NumberField* m_fillX = nullptr;
    NumberField* m_fillY = nullptr;
};

}  // namespace pantile::desktop
