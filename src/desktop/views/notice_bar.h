#pragma once

#include <QStringList>
#include <QWidget>

#include "desktop/theme/theme.h"
#include "desktop/views/mark.h"

class QPlainTextEdit;
class QProgressBar;
class QPushButton;

namespace pantile::desktop {

class PlainLabel;

struct Notice {
    MarkKind kind = MarkKind::Done;
    QString text;
    QStringList lines;  ///< One for each thing that needs a line of its own.
};

/// Where the window says what happened and how far it is, instead of in a box.
class NoticeBar : public QWidget {
    Q_OBJECT

public:
    /// The theme must outlive it.
    NoticeBar(const Theme& theme, QWidget* parent);

    void showNotice(const Notice& notice);
    void showProgress(int done, int total, const QString& what);

Q_SIGNALS:
    void stopAsked();

private:
    Mark* m_mark;
    PlainLabel* m_text;
    QPlainTextEdit* m_lines;
    QProgressBar* m_progress;
    QPushButton* m_stop;
    QPushButton* m_dismiss;
};

}  // namespace pantile::desktop
