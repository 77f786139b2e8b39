#pragma once

#include <QWidget>

#include "desktop/action_table.h"
#include "desktop/chosen_textures.h"
#include "desktop/load_work.h"
#include "desktop/theme/theme.h"

class QComboBox;
class QPlainTextEdit;
class QSpinBox;

namespace pantile::desktop {

class PlainLabel;
class TickBox;

/// What the best set is picked from and how, and why textures were left out.
class ChooseForm : public QWidget {
    Q_OBJECT

public:
    /// All must outlive it.
    ChooseForm(const Theme& theme, Actions& actions, const ChosenTextures& chosen, LoadWork& work,
               QWidget* parent);

    /// Those there are to choose from.
    void setShelves(const QStringList& names);

private:
    void makeLayout();
    void showChosen();
    void choose();
    void showAnswer(const ChooseAnswer& answer);

    Actions& m_actions;
    const ChosenTextures& m_chosen;
    LoadWork& m_work;
    QComboBox* m_from;
    QSpinBox* m_minutes;
    TickBox* m_keep;
    TickBox* m_overSeveral;
    PlainLabel* m_answer;
    QPlainTextEdit* m_leftOut;
};

}  // namespace pantile::desktop
