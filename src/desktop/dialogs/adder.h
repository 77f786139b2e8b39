#pragma once

#include <deque>

#include <QObject>
#include <QPointer>

#include "desktop/app_context.h"
#include "desktop/jobs/background_job.h"
#include "desktop/jobs/gather_job.h"
#include "desktop/jobs/look_job.h"

class QWidget;

namespace pantile::desktop {

class ConvertDialog;

/// What came by drop, paste or file dialog, on its way to be added: where pictures lose something
/// by becoming textures, the person is asked how.
class Adder : public QObject {
    Q_OBJECT

public:
    /// `window` is what the dialog stands over. The context must outlive it.
    Adder(AppContext& context, QWidget* window);

    void take(GatherRequest request, AskFor asked);

    /// It is being looked at; a person who is asked may take any time.
    bool isRunning() const { return m_looking.isRunning(); }

    /// For closing. Nothing of what waits is added.
    void stopAndWait();

Q_SIGNALS:
    void ready(const GatherRequest& request);
    void failed(const core::Error& error);

private:
    struct Waiting {
        GatherRequest request;
        AskFor asked;
    };

    void lookAtNext();
    void ask(const GatherRequest& request, const core::Result<RequestLook>& look);
    void goOn();

    AppContext& m_context;
    QWidget* m_window;
    std::deque<Waiting> m_waiting;
    QPointer<ConvertDialog> m_dialog;
    BackgroundJob<RequestLook> m_looking;
};

}  // namespace pantile::desktop
