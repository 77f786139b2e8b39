#include "desktop/dialogs/adder.h"

#include "desktop/dialogs/convert_dialog.h"

namespace pantile::desktop {

Adder::Adder(AppContext& context, QWidget* window)
    : QObject(window), m_context(context), m_window(window), m_looking(context.jobs) {}

void Adder::take(GatherRequest request, AskFor asked) {
    m_waiting.push_back({std::move(request), asked});
    if (m_waiting.size() == 1) lookAtNext();
}

void Adder::stopAndWait() {
    m_waiting.clear();
    m_looking.stopAndWait();
    if (m_dialog) m_dialog->reject();
}

void Adder::lookAtNext() {
    const Waiting& next = m_waiting.front();
    if (!mayHoldPictures(next.request)) {
        Q_EMIT ready(next.request);
        return goOn();
    }
    m_looking.start(
        [path = m_context.libraryPath, next](const core::Progress& progress) {
            return lookAt(path, next.request, next.asked, progress);
        },
        [this](const core::Result<RequestLook>& look) { ask(m_waiting.front().request, look); });
}

void Adder::ask(const GatherRequest& request, const core::Result<RequestLook>& look) {
    if (!look || look->pictures.empty()) {
        if (look) {
            Q_EMIT ready(request);
        } else {
            Q_EMIT failed(look.error());
        }
        return goOn();
    }
    m_dialog = new ConvertDialog(*look, m_context.jobs, m_context.theme, m_window->window());
    connect(m_dialog, &QDialog::finished, this,
            [this, request = GatherRequest(request)](int result) mutable {
                if (result == QDialog::Accepted) {
                    request.options = m_dialog->options();
                    Q_EMIT ready(request);
                }
                goOn();
            });
    m_dialog->open();
}

void Adder::goOn() {
    if (!m_waiting.empty()) m_waiting.pop_front();
    if (!m_waiting.empty()) lookAtNext();
}

}  // namespace pantile::desktop
