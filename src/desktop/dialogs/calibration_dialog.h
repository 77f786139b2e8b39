#pragma once

#include <QDialog>

#include "desktop/app_context.h"

namespace pantile::desktop {

class CalibrationForm;

/// The calibration helper in a box of its own, beside which one can go on working.
class CalibrationDialog : public QDialog {
    Q_OBJECT

public:
    /// The context must outlive it.
    CalibrationDialog(AppContext& context, QWidget* parent);

    CalibrationForm& form() { return *m_form; }

    void done(int result) override;

private:
    CalibrationForm* m_form;
};

}  // namespace pantile::desktop
