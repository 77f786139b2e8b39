#pragma once

#include <QWidget>

#include "desktop/action_table.h"
#include "desktop/app_context.h"
#include "desktop/chosen_textures.h"

namespace pantile::desktop {

class NoticeBar;
class ReadBench;
class ShareBench;

/// The place called Codes: what is chosen goes out on one side, texts come in on the other.
class CodesPage : public QWidget {
    Q_OBJECT

public:
    /// All must outlive it.
    CodesPage(AppContext& context, Actions& actions, const ChosenTextures& chosen,
              NoticeBar& notices, QWidget* parent);

    void stopAndWait();

    /// The library has changed: what is shown is worked out anew.
    void renew();

Q_SIGNALS:
    void addAsked(const QString& text);

private:
    ShareBench* m_share;
    ReadBench* m_read;
};

}  // namespace pantile::desktop
