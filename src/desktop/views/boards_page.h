#pragma once

#include <QWidget>

#include "desktop/action_table.h"
#include "desktop/app_context.h"
#include "desktop/chosen_textures.h"
#include "desktop/load_work.h"

class QScrollArea;

namespace pantile::desktop {

class ChooseForm;
class DrawingBench;
class LoadList;
class NoticeBar;
class PlainLabel;
class WriteForm;

/// The place called Boards: choose, write, and watch the drawing. The load itself lies in the tray.
class BoardsPage : public QWidget {
    Q_OBJECT

public:
    /// All must outlive it.
    BoardsPage(AppContext& context, Actions& actions, const ChosenTextures& chosen, LoadWork& work,
               NoticeBar& notices, QWidget* parent);

    /// Its drawing is shown; none if null.
    void showSlot(const catalogue::TextureRow* row);

    /// Those that one can choose from.
    void setShelves(const QStringList& names);

    /// The library has changed.
    void renew();

    /// For closing: what is written is written, and nothing runs.
    void finishAll();

Q_SIGNALS:
    /// The library notes that a load was written, or has a canvas as it was calibrated.
    void changed();

private:
    QScrollArea* makeBench();
    void connectActions();
    void calibrate();
    void showContents();

    AppContext& m_context;
    Actions& m_actions;
    const ChosenTextures& m_chosen;
    LoadWork& m_work;
    NoticeBar& m_notices;
    PlainLabel* m_words;
    PlainLabel* m_noLoads;
    LoadList* m_loads;
    ChooseForm* m_choose;
    WriteForm* m_write;
    DrawingBench* m_drawing;
};

}  // namespace pantile::desktop
