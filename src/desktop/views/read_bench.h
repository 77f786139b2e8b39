#pragma once

#include <QTimer>
#include <QWidget>

#include "desktop/action_table.h"
#include "desktop/app_context.h"
#include "desktop/jobs/background_job.h"
#include "desktop/jobs/read_text_job.h"

class QListWidget;
class QPlainTextEdit;

namespace pantile::desktop {

class PlainLabel;

/// A text that somebody pasted: where its codes stand and where they are damaged is marked in it,
/// and what they hold stands below.
class ReadBench : public QWidget {
    Q_OBJECT

public:
    /// Context and actions must outlive it.
    ReadBench(AppContext& context, Actions& actions, QWidget* parent);

    void stopAndWait();

    /// Reads the text anew, as the library may know more of it by now.
    void renew();

Q_SIGNALS:
    /// The textures of this text are to be added to the library.
    void addAsked(const QString& text);

private:
    void makeLayout(Actions& actions);
    void read();
    void showAnswer(const core::Result<ReadTextAnswer>& answer);
    void showItems(const ReadTextAnswer& answer);
    void markText(const std::vector<TextMark>& marks);
    void goTo(int row);

    AppContext& m_context;
    QAction& m_add;
    QPlainTextEdit* m_text;
    PlainLabel* m_counts;
    QListWidget* m_list;
    QTimer m_pause;
    std::vector<int> m_places;  ///< Of each row of the list, in the text.
    BackgroundJob<ReadTextAnswer> m_reading;
};

}  // namespace pantile::desktop
