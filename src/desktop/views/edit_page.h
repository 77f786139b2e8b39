#pragma once

#include <optional>

#include <QWidget>

#include "desktop/action_table.h"
#include "desktop/app_context.h"
#include "desktop/chosen_textures.h"
#include "desktop/edit/edit_session.h"
#include "desktop/edit/painting.h"
#include "desktop/edit/work_saver.h"
#include "desktop/jobs/background_job.h"
#include "desktop/jobs/edit_job.h"

class QLabel;
class QStackedWidget;

namespace pantile::desktop {

class EditCanvas;
class NoticeBar;
class OperationForm;
class PalettePicker;
class PlainLabel;
class ToolOptions;
class WordsPage;
class WorkCosts;

/// The place called Edit: the texture that is chosen lies in the middle to be touched up, with its
/// colours and the tools in front of it; beside it stands what it costs and what can be done to it
/// as a whole. What was made is kept as a revision when one asks for it or leaves.
class EditPage : public QWidget {
    Q_OBJECT

public:
    /// All must outlive it.
    EditPage(AppContext& context, Actions& actions, const ChosenTextures& chosen,
             NoticeBar& notices, QWidget* parent);

    /// For closing: all is kept and nothing runs any more. False if something could not be kept;
    /// the window has said why.
    bool keepAndStop();

    /// The library has changed: if its texture is another and nothing was done to it here, takes
    /// it up anew.
    void renew();

Q_SIGNALS:
    /// What a program that died had not kept is in the library now.
    void recovered();

protected:
    void showEvent(QShowEvent* event) override;
    void hideEvent(QHideEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    using Recovered = std::vector<tasks::RecoveredWork>;

    void makeLayout();
    QWidget* makeHead();
    QWidget* makeMiddle();
    QWidget* makeBench();
    void connectCanvas();
    void connectActions();
    void connectTools();
    void connectHistory();

    /// Whether another texture is chosen than the one that lies here.
    bool isOtherChosen() const;

    void takeUp();
    void open(core::TextureId id);
    void showNothing(const QString& why);
    void say(const QString& caution);

    void chooseTool(Tool tool);
    void applySettings();
    void showColours();
    void pickUp(core::Point cell);
    void showCell(core::Point cell);

    void tryOperation();
    void showTried(const core::Result<core::Texture>& tried);
    void applyOperation();

    const core::Texture& shown() const;
    void showWork();
    void showActions();

    void recover();
    void showRecovered(const core::Result<Recovered>& answer);

    void keep();
    tasks::UnkeptWork unkept() const;
    void kept(const tasks::UnkeptWork& work, const core::Result<tasks::KeptWork>& answer);

    AppContext& m_context;
    Actions& m_actions;
    const ChosenTextures& m_chosen;
    NoticeBar& m_notices;
    EditSession m_session;
    Painting m_painting;
    PlainLabel* m_words;
    EditCanvas* m_canvas;
    PlainLabel* m_cellWords;
    PalettePicker* m_palette;
    WorkCosts* m_costs;
    QLabel* m_toolTitle;
    ToolOptions* m_options;
    OperationForm* m_form;
    QWidget* m_work;
    WordsPage* m_nothing;
    QStackedWidget* m_either;

    Tool m_tool = Tool::Pen;
    std::optional<core::Texture> m_preview;  ///< What the operation in the form would make.
    bool m_couldNotKeep = false;             ///< Nothing else is taken up while this is so.
    bool m_hasWarned = false;                ///< That another program changed the texture.
    BackgroundJob<core::Texture> m_trying;
    BackgroundJob<tasks::KeptWork> m_keeping;
    BackgroundJob<Recovered> m_recovering;
    WorkSaver m_saver;
};

}  // namespace pantile::desktop
