#include "desktop/dialogs/calibration_dialog.h"

#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>

#include "desktop/theme/apply_theme.h"
#include "desktop/views/calibration_form.h"

namespace pantile::desktop {

CalibrationDialog::CalibrationDialog(AppContext& context, QWidget* parent)
    : QDialog(parent), m_form(new CalibrationForm(context, this)) {
    setObjectName(QStringLiteral("calibrationDialog"));
    setWindowTitle(tr("Calibrate a Canvas"));
    setAttribute(Qt::WA_DeleteOnClose);
    auto* const scroll = new QScrollArea(this);
    scroll->setAccessibleName(tr("Steps of the calibration"));
    scroll->setWidgetResizable(true);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    auto* const inside = new QWidget(scroll);
    auto* const around = new QVBoxLayout(inside);
    around->setContentsMargins(0, 0, 2 * kGap, 0);  // Beside the scroll bar.
    around->addWidget(m_form);
    scroll->setWidget(inside);
    auto* const close = new QPushButton(tr("Close"), this);
    close->setObjectName(QStringLiteral("calibrationClose"));
    close->setAutoDefault(false);
    for (QPushButton* const button : m_form->findChildren<QPushButton*>())
        button->setAutoDefault(false);  // Enter in a number must not write or take.
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins(2 * kGap, 2 * kGap, 2 * kGap, 2 * kGap);
    layout->setSpacing(2 * kGap);
    layout->addWidget(scroll);
    layout->addWidget(close, 0, Qt::AlignRight);
    connect(close, &QPushButton::clicked, this, &QDialog::accept);
    const QSize wanted(1080, 720);
    resize(wanted.boundedTo(parent->window()->size() - QSize(4 * kGap, 4 * kGap)));
}

void CalibrationDialog::done(int result) {
    m_form->finishAll();
    QDialog::done(result);
}

}  // namespace pantile::desktop
