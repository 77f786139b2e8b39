#pragma once

#include <QScrollArea>

#include "desktop/action_table.h"
#include "desktop/jobs/details_job.h"
#include "desktop/theme/theme.h"

class QVBoxLayout;

namespace pantile::desktop {

class PictureView;
class PlainLabel;
class RevisionList;
class SwatchStrip;

/// The bench beside the wall: everything about the chosen texture.
class DetailPane : public QScrollArea {
    Q_OBJECT

public:
    /// The theme must outlive it.
    DetailPane(const Actions& actions, const Theme& theme, QWidget* parent);

    void showTexture(const TextureDetails& details);

    /// Instead of a texture: what is wrong, or what to do.
    void showWords(const QString& text);

Q_SIGNALS:
    void revertAsked(core::TextureId id, int revision);

private:
    QWidget* makeTexturePart(const Actions& actions, const Theme& theme);
    void addFact(QVBoxLayout& layout, const char* name, const QString& label);
    void setFact(const char* name, const QString& value);

    PlainLabel* m_title;
    PlainLabel* m_words;
    PictureView* m_picture;
    SwatchStrip* m_swatches;
    RevisionList* m_revisions;
    core::TextureId m_id;
    QWidget* m_texturePart;
};

}  // namespace pantile::desktop
