#pragma once

#include <optional>
#include <string>
#include <vector>

#include <QDialog>

#include "catalogue/edit.h"
#include "catalogue/texture_row.h"
#include "core/result.h"
#include "desktop/theme/theme.h"

class QGridLayout;
class QLineEdit;
class QPlainTextEdit;
class QPushButton;

namespace pantile::desktop {

class ChoiceBox;
class PlainLabel;

/// What shall be said of textures; what is unset stays as it is.
struct WordsChange {
    catalogue::TextPatch patch;
    std::vector<std::string> add;
    std::vector<std::string> drop;

    bool isEmpty() const;
};

/// Asks for the words and stars of one texture, or of many at once.
class WordsDialog : public QDialog {
    Q_OBJECT

public:
    /// `row` is the one texture, if `count` is 1. The theme must outlive it.
    WordsDialog(std::int64_t count, const catalogue::TextureRow* row, const Theme& theme,
                QWidget* parent);

    /// Of what was typed or chosen.
    core::Result<WordsChange> change() const;

private:
    QLineEdit* addLine(const char* name, const QString& label, const std::string& now);
    void addField(const QString& label, QWidget* field);
    void check();

    bool m_isOne;
    QGridLayout* m_grid;
    QLineEdit* m_title = nullptr;
    QLineEdit* m_author = nullptr;
    QLineEdit* m_licence = nullptr;
    QLineEdit* m_source = nullptr;
    QPlainTextEdit* m_note = nullptr;
    QLineEdit* m_add = nullptr;
    QLineEdit* m_drop = nullptr;
    ChoiceBox* m_stars = nullptr;
    PlainLabel* m_error = nullptr;
    QPushButton* m_accept = nullptr;
};

}  // namespace pantile::desktop
