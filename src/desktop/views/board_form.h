#pragma once

#include "core/board.h"
#include "desktop/models/profile.h"
#include "desktop/views/checked_form.h"

namespace pantile::desktop {

/// All that is said of a board, checked as it is typed.
class BoardForm : public CheckedForm {
    Q_OBJECT

public:
    /// The theme must outlive it.
    BoardForm(const Theme& theme, QWidget* parent);

    /// `board` may be one that is not right yet. `own` is what the library calls it.
    void showBoard(const core::Board& board, const ProfileKey& own, const Profiles& known);

    /// Other names or another own one; what was typed stays.
    void setKnown(const ProfileKey& own, const Profiles& known);

    /// As it stands in the fields, right or not.
    core::Board board() const;

private:
    void makeTimingPart();
    void setTiming(const core::PointerTiming& timing);
    void check();

    ProfileKey m_own;
    Profiles m_known;
    QLineEdit* m_name = nullptr;
    QLineEdit* m_description = nullptr;
    ChoiceBox* m_memory = nullptr;
    NumberField* m_slots = nullptr;
    NumberField* m_bytes = nullptr;
    ChoiceBox* m_timing = nullptr;
    NumberField* m_report = nullptr;
    NumberField* m_stepUp = nullptr;
    NumberField* m_stepDown = nullptr;
    NumberField* m_press = nullptr;
    NumberField* m_release = nullptr;
    NumberField* m_settle = nullptr;
    TickBox* m_display = nullptr;
    NumberField* m_displayWidth = nullptr;
    NumberField* m_displayHeight = nullptr;
};

}  // namespace pantile::desktop
