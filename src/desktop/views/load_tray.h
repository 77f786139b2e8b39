#pragma once

#include <QWidget>

#include "desktop/action_table.h"
#include "desktop/app_context.h"
#include "desktop/chosen_textures.h"
#include "desktop/load_work.h"

class QComboBox;
class QLabel;

namespace pantile::desktop {

class CostBar;
class Mark;
class PlainLabel;
class TrayView;
class WrappedRow;

/// The load tray along the bottom edge: one compartment a slot, and what all together take.
class LoadTray : public QWidget {
    Q_OBJECT

public:
    /// All must outlive it.
    LoadTray(AppContext& context, Actions& actions, const ChosenTextures& chosen, LoadWork& work,
             QWidget* parent);

Q_SIGNALS:
    /// What lies in the current slot, or the first one; null if that is empty. It may be the same
    /// as before.
    void slotChosen(const catalogue::TextureRow* row);

protected:
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dropEvent(QDropEvent* event) override;

private:
    WrappedRow* makeHead();
    void connectParts();
    void connectActions();
    void showContents();
    void showCosts();
    void showBars();
    QString problemWords() const;
    void enableActions();
    void tellCurrent();
    void move(int by);

    Actions& m_actions;
    const ChosenTextures& m_chosen;
    LoadWork& m_work;
    QComboBox* m_loads;
    QComboBox* m_boards;
    TrayView* m_slots;
    QLabel* m_slotWords;
    QLabel* m_byteWords;
    QLabel* m_timeWords;
    Mark* m_caution;
    PlainLabel* m_problem;
    CostBar* m_bytes;
    CostBar* m_seconds;
};

}  // namespace pantile::desktop
