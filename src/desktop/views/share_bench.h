#pragma once

#include <QWidget>

#include "desktop/action_table.h"
#include "desktop/app_context.h"
#include "desktop/chosen_textures.h"
#include "desktop/jobs/background_job.h"
#include "desktop/jobs/posts_job.h"

class QComboBox;
class QListWidget;
class QPlainTextEdit;
class QSpinBox;

namespace pantile::desktop {

class PlainLabel;
class TickBox;

/// What is chosen as codes to paste: for which place, how long a post may be, and each post as it
/// will be pasted.
class ShareBench : public QWidget {
    Q_OBJECT

public:
    /// Context, actions and what is chosen must outlive it.
    ShareBench(AppContext& context, Actions& actions, const ChosenTextures& chosen,
               QWidget* parent);

    void stopAndWait();

    /// Writes the posts anew, as the textures may be others by now.
    void renew() { ask(); }

    /// More are not written at once: nobody pastes them, and the window would wait.
    static constexpr std::size_t kMostShared = 500;

Q_SIGNALS:
    /// Posts lie on the clipboard.
    void copied(int posts, std::int64_t characters);

protected:
    void showEvent(QShowEvent* event) override;

private:
    QWidget* makeOptions();
    QWidget* makeButtons();
    void ask();
    void showPosts(const core::Result<Posts>& posts);
    void showPost(int number);
    void showNothing(const QString& why);
    void copy(const QStringList& texts);

    AppContext& m_context;
    Actions& m_actions;
    const ChosenTextures& m_chosen;
    PlainLabel* m_words;
    QComboBox* m_syntax;
    QSpinBox* m_limit;
    TickBox* m_asSet;
    TickBox* m_withoutPalette;
    QListWidget* m_list;
    QPlainTextEdit* m_post;
    PlainLabel* m_costs;
    std::vector<Post> m_posts;
    bool m_isStale = true;  ///< Something changed since the posts were asked for.
    BackgroundJob<Posts> m_writing;
};

}  // namespace pantile::desktop
