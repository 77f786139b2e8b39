#pragma once

#include <optional>

#include "catalogue/palettes.h"
#include "desktop/app_context.h"
#include "desktop/jobs/background_job.h"
#include "desktop/models/profile.h"
#include "desktop/views/checked_form.h"

class QListWidget;
class QPushButton;

namespace pantile::desktop {

/// A palette's name and its colours in their order, changed in place.
class PaletteForm : public CheckedForm {
    Q_OBJECT

public:
    /// The context must outlive it.
    PaletteForm(AppContext& context, QWidget* parent);

    /// `own` is what the library calls it.
    void showPalette(const catalogue::NamedPalette& palette, const ProfileKey& own,
                     const Profiles& known);

    /// Other names or another own one; what was typed stays.
    void setKnown(const ProfileKey& own, const Profiles& known);

    /// Its name may be no good yet.
    catalogue::NamedPalette palette() const;

    void stopAndWait();

Q_SIGNALS:
    /// Of reading or writing a file.
    void failed(const core::Error& error);
    void written(const QString& file);

private:
    QPushButton* makeButton(const char* name, const QString& words, const QString& tip);
    void makeButtons();
    void connectParts();
    int row() const;
    void fill(int current);
    void showColour();
    void readHex();
    void setColour(core::Rgb8 colour);
    void addColour();
    void removeColour();
    void move(int by);
    void pick();
    void takeFromFile();
    void writeToFile();
    void check();

    AppContext& m_context;
    ProfileKey m_own;
    Profiles m_known;
    std::vector<core::Rgb8> m_colours =
        std::vector<core::Rgb8>(core::kMinPaletteColours);  ///< Always a whole palette.
    std::optional<core::PaletteIndex> m_transparent;
    QLineEdit* m_name;
    QListWidget* m_list;
    QLineEdit* m_hex;
    TickBox* m_unpainted;
    QPushButton* m_add = nullptr;
    QPushButton* m_remove = nullptr;
    QPushButton* m_earlier = nullptr;
    QPushButton* m_later = nullptr;
    QPushButton* m_pick = nullptr;
    QPushButton* m_import = nullptr;
    QPushButton* m_export = nullptr;
    BackgroundJob<core::Palette> m_reading;
    BackgroundJob<QString> m_writing;
};

}  // namespace pantile::desktop
