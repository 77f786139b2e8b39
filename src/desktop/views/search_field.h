#pragma once

#include <QLineEdit>
#include <QStringList>

class QCompleter;
class QStringListModel;

namespace pantile::desktop {

/// A line of text that leaves pasting to the window where the clipboard holds no line of text, and
/// that Down leaves and Escape empties.
class SearchField : public QLineEdit {
    Q_OBJECT

public:
    explicit SearchField(QWidget* parent);

    /// Tags and shelves to complete words from, beside the keys of the query language.
    void setNames(const QStringList& tags, const QStringList& shelves);

    /// What the word before the cursor may become, whole words.
    QStringList completionsOf(const QString& word) const;

Q_SIGNALS:
    void left();

protected:
    bool event(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    void offer();
    void take(const QString& word);
    int wordBegin() const;

    QStringList m_tags;
    QStringList m_shelves;
    QStringListModel* m_offered;
    QCompleter* m_completer;
};

}  // namespace pantile::desktop
