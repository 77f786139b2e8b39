#pragma once

#include <functional>

#include <QWidget>

#include "desktop/action_table.h"
#include "desktop/app_context.h"
#include "desktop/jobs/background_job.h"
#include "desktop/jobs/write_job.h"
#include "desktop/load_work.h"

class QComboBox;
class QPlainTextEdit;

namespace pantile::desktop {

class NoticeBar;
class TickBox;

/// Writes, verifies and prints the load in the tray, says what to mind before a board is plugged
/// in, and what lies on which board.
class WriteForm : public QWidget {
    Q_OBJECT

public:
    /// All must outlive it.
    WriteForm(AppContext& context, Actions& actions, LoadWork& work, NoticeBar& notices,
              QWidget* parent);

    /// Reads anew what was written.
    void renew();

    /// For closing: a load that is being written is written; nothing runs.
    void finishAll();

Q_SIGNALS:
    void written();

private:
    void makeLayout();
    void connectActions();
    void enableActions();
    WriteRequest request(const QString& folder) const;
    void write();
    void verify();
    void print();

    /// `whenDone` is called if it went well.
    void start(BackgroundJob<WriteAnswer>::Work work, const std::function<void()>& whenDone = {});
    void showAnswer(const core::Result<WriteAnswer>& answer);

    AppContext& m_context;
    Actions& m_actions;
    LoadWork& m_work;
    NoticeBar& m_notices;
    QComboBox* m_form;
    TickBox* m_replace;
    QPlainTextEdit* m_written;
    BackgroundJob<WriteAnswer> m_writing;
    BackgroundJob<QStringList> m_reading;
};

}  // namespace pantile::desktop
