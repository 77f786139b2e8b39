#pragma once

#include <QWidget>

class QAction;

namespace pantile::desktop {

class PlainLabel;

/// What stands in place of something that is not there: why, and the one thing to do about it.
class WordsPage : public QWidget {
    Q_OBJECT

public:
    /// `what` is the action's text without menu marks.
    WordsPage(QAction& action, const QString& what, QWidget* parent);

    void setWords(const QString& words);

private:
    PlainLabel* m_words;
};

}  // namespace pantile::desktop
