#pragma once

#include <optional>
#include <vector>

#include <QWidget>

#include "desktop/jobs/look_job.h"
#include "desktop/theme/theme.h"
#include "tasks/gather.h"

class QComboBox;
class QGridLayout;
class QLineEdit;

namespace pantile::desktop {

class ChoiceBox;
class NumberSlider;
class PlainLabel;
class TickBox;

/// Asks how pictures become textures, and for the words that these get. Dither and part are chosen
/// elsewhere, where they can be seen.
class ConvertForm : public QWidget {
    Q_OBJECT

public:
    /// The theme must outlive it.
    ConvertForm(const RequestLook& look, const Theme& theme, QWidget* parent);

    /// Nothing while something that was typed cannot be followed; what is wrong stands in the form.
    std::optional<tasks::GatherOptions> options();

    void setTitle(const QString& title);

Q_SIGNALS:
    /// Another picture would come of it.
    void changed();

    /// The words are others.
    void wordsChanged();

private:
    void makeGridPart();
    void makeColourPart();
    void makeLightPart();
    void makeWordPart();
    void addHeading(const QString& words);
    void addField(const QString& label, QWidget* field);
    ChoiceBox* addChoice(const char* name, const QString& label, const QStringList& choices);
    NumberSlider* addNumber(const char* name, const QString& label, int least, int most, int usual);
    TickBox* addTick(const char* name, const QString& label);
    QLineEdit* addLine(const char* name, const QString& label, const QString& example);
    core::Result<tasks::GatherOptions> read() const;
    core::Result<void> readColours(tasks::PictureSettings& settings) const;
    void readWords(tasks::GatherOptions& options) const;

    const RequestLook m_look;
    const Theme& m_theme;
    QGridLayout* m_grid;
    PlainLabel* m_error = nullptr;
    ChoiceBox* m_canvas = nullptr;
    ChoiceBox* m_fit = nullptr;
    ChoiceBox* m_anchor = nullptr;
    ChoiceBox* m_scale = nullptr;
    TickBox* m_undoEnlarged = nullptr;
    NumberSlider* m_colours = nullptr;
    NumberSlider* m_strength = nullptr;
    NumberSlider* m_merge = nullptr;
    NumberSlider* m_simplify = nullptr;
    QLineEdit* m_pinned = nullptr;
    QLineEdit* m_background = nullptr;
    NumberSlider* m_alpha = nullptr;
    TickBox* m_levels = nullptr;
    NumberSlider* m_gamma = nullptr;
    NumberSlider* m_brightness = nullptr;
    NumberSlider* m_contrast = nullptr;
    NumberSlider* m_saturation = nullptr;
    NumberSlider* m_sharpen = nullptr;
    QLineEdit* m_title = nullptr;
    QLineEdit* m_tags = nullptr;
    QLineEdit* m_shelf = nullptr;
    QLineEdit* m_author = nullptr;
    QLineEdit* m_licence = nullptr;
    QLineEdit* m_source = nullptr;
};

}  // namespace pantile::desktop
