#pragma once

// A texture under work: every change can be undone and done again until another is taken up.

#include <optional>
#include <vector>

#include <QObject>
#include <QString>

#include "core/ids.h"
#include "core/texture.h"

namespace pantile::desktop {

/// Whether cells and palettes are the same; words are edited elsewhere.
bool haveSamePicture(const core::Texture& one, const core::Texture& other);

class EditSession : public QObject {
    Q_OBJECT

public:
    using QObject::QObject;

    /// Takes up a texture as the library has it. What was under work before is forgotten.
    void open(core::TextureId id, core::Texture texture);

    void close();

    bool isOpen() const { return m_kept.has_value(); }

    /// The rest is for an open session alone.
    core::TextureId id() const { return m_id; }

    /// As it is under work.
    const core::Texture& texture() const { return m_states[m_now].texture; }

    /// As the library has it.
    const core::Texture& kept() const { return *m_kept; }

    /// Whether there is anything to keep.
    bool isChanged() const;

    /// Goes on with `texture`; `name` says what was done. Nothing happens if it is the same.
    void change(const QString& name, core::Texture texture);

    /// The library has `texture` now, under `id`, which may be another than before.
    void markKept(core::TextureId id, core::Texture texture);

    /// What undo() takes back, and what redo() does again; empty if there is nothing.
    QString undoName() const;
    QString redoName() const;

    void undo();
    void redo();

    /// States in memory; the oldest are forgotten.
    static constexpr std::size_t kMostStates = 500;

Q_SIGNALS:
    /// Another texture, or the same in another state.
    void changed();

private:
    struct State {
        QString name;  ///< Of what led to it.
        core::Texture texture;
    };

    core::TextureId m_id;
    std::optional<core::Texture> m_kept;
    std::vector<State> m_states;
    std::size_t m_now = 0;
};

}  // namespace pantile::desktop
