#pragma once

#include <functional>
#include <optional>
#include <vector>

#include <QStringList>
#include <QWidget>

#include "core/palette.h"
#include "desktop/edit/whole_operations.h"
#include "desktop/theme/theme.h"

class QComboBox;
class QGridLayout;
class QPushButton;

namespace pantile::desktop {

class PlainLabel;

/// Asks for an operation on the texture as a whole and for what it needs to know. Whoever has the
/// form shows what the operation would do while one chooses.
class OperationForm : public QWidget {
    Q_OBJECT

public:
    struct Asked {
        QString name;
        tasks::TouchOperation operation;
    };

    /// The theme must outlive it.
    OperationForm(const Theme& theme, QWidget* parent);

    /// For the colours that it asks for: the two that are picked come first to mind.
    void setColours(const core::Palette& palette, int picked, int other);

    /// Of the library, as they are called there.
    void setPaletteNames(const std::vector<std::string>& names);

    /// Nothing while none is chosen.
    std::optional<Asked> asked() const;

    /// Chooses none.
    void leave();

    /// It can be done: what it makes is shown.
    void allow();

    /// It cannot, and why.
    void refuse(const QString& why);

Q_SIGNALS:
    /// Another operation, or other answers.
    void changed();

    /// Do it.
    void accepted();

private:
    const WholeOperation* chosen() const;
    void showQuestions();
    void addQuestion(const Question& question);
    void addNumber(const Question& question, const QString& label);
    void addChoice(const Question& question, const QString& label);
    void addField(const QString& label, QWidget* field);
    void fillWithColours(QComboBox& box) const;
    void tellChanged();

    const Theme& m_theme;
    QComboBox* m_operations;
    QWidget* m_questions;
    QGridLayout* m_grid;
    PlainLabel* m_error;
    QPushButton* m_accept;
    QPushButton* m_leave;
    std::vector<std::function<int()>> m_answers;  ///< One for each question.
    std::vector<QComboBox*> m_colourBoxes;
    std::optional<core::Palette> m_palette;
    int m_picked = 0;
    int m_other = 1;
    std::vector<std::string> m_paletteNames;
};

}  // namespace pantile::desktop
