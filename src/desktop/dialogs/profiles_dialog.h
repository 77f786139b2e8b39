#pragma once

#include <map>
#include <optional>

#include <QDialog>
#include <QTimer>

#include "desktop/action_table.h"
#include "desktop/app_context.h"
#include "desktop/chosen_textures.h"
#include "desktop/jobs/profiles_job.h"
#include "desktop/models/profile.h"
#include "desktop/views/mark.h"

class QPushButton;
class QStackedWidget;
class QTreeWidget;
class QTreeWidgetItem;

namespace pantile::desktop {

class BoardForm;
class CanvasForm;
class PaletteForm;
class PlainLabel;
class ProfileWork;
class ScreenPicture;
class SlotsPicture;

/// The canvases, boards and palettes of the library, changed in place. What is right is kept when
/// one goes on to another or closes; what is not right yet waits until it is.
class ProfilesDialog : public QDialog {
    Q_OBJECT

public:
    /// All must outlive it.
    ProfilesDialog(AppContext& context, Actions& actions, const ChosenTextures& chosen,
                   ProfileWork& work, QWidget* parent);
    ~ProfilesDialog() override;

    void done(int result) override;

private:
    QWidget* makeListPane();
    QWidget* makePicturePane();
    QWidget* makeFormPane();
    QWidget* makeFoot(Actions& actions);
    void connectParts();

    void renewList();
    void addHeading(ProfileKind kind);
    void choose(QTreeWidgetItem* item);
    void select(const ProfileKey& key);
    ProfileKind currentKind() const;

    /// The draft if there is one, else what the library has; null if it is gone.
    const Profile* wanted(const ProfileKey& key) const;
    void showForm();
    void tellKnown();
    std::optional<Profile> inForm() const;
    void readForm();
    void showPicture();
    void showButtons();
    void startTrial();
    void showTrial(const TrialCost& tried);

    /// Keeps the draft of what is shown if it is right; else it stays a draft.
    void keep();
    void takeBack();
    void add();
    void copy();
    void remove();
    void say(MarkKind kind, const QString& words);

    const ChosenTextures& m_chosen;
    ProfileWork& m_work;
    std::map<ProfileKey, Profile> m_drafts;  ///< By the library's names.
    std::optional<ProfileKey> m_shown;
    bool m_isFilling = false;

    QTreeWidget* m_tree;
    QStackedWidget* m_forms;
    QStackedWidget* m_pictures;
    CanvasForm* m_canvasForm;
    BoardForm* m_boardForm;
    PaletteForm* m_paletteForm;
    ScreenPicture* m_screen;
    SlotsPicture* m_slots;
    PlainLabel* m_facts;
    PlainLabel* m_cost;
    Mark* m_mark;
    PlainLabel* m_state;
    QPushButton* m_add;
    QPushButton* m_copy;
    QPushButton* m_remove;
    QPushButton* m_takeBack;
    QPushButton* m_keep;
    QTimer m_trialTimer;
};

}  // namespace pantile::desktop
