#include "desktop/dialogs/keys_dialog.h"

#include <QCoreApplication>
#include <QGridLayout>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>

#include "desktop/action_table.h"
#include "desktop/theme/apply_theme.h"

namespace pantile::desktop {

namespace {

void addLine(QGridLayout& grid, const QString& keys, const QString& what) {
    const int row = grid.rowCount();
    auto* const keyLabel = new QLabel(keys, grid.parentWidget());
    QFont bold = keyLabel->font();
    bold.setBold(true);
    keyLabel->setFont(bold);
    keyLabel->setTextFormat(Qt::PlainText);
    grid.addWidget(keyLabel, row, 0, Qt::AlignTop);
    auto* const whatLabel = new QLabel(what, grid.parentWidget());
    whatLabel->setWordWrap(true);
    grid.addWidget(whatLabel, row, 1, Qt::AlignTop);
}

QWidget* makeList(QWidget* parent) {
    auto* const list = new QWidget(parent);
    auto* const grid = new QGridLayout(list);
    grid->setHorizontalSpacing(3 * kGap);
    grid->setVerticalSpacing(kGap);
    grid->setColumnStretch(1, 1);
    for (const ActionRow& row : actionTable()) {
        const QString keys = QKeySequence::listToString(row.keys, QKeySequence::NativeText);
        addLine(*grid, keys, QCoreApplication::translate("actions", row.what));
    }
    for (const WidgetKey& key : widgetKeys()) {
        addLine(*grid, QCoreApplication::translate("actions", key.keys),
                QCoreApplication::translate("actions", key.what));
    }
    return list;
}

}  // namespace

KeysDialog::KeysDialog(QWidget* parent) : QDialog(parent) {
    setObjectName(QStringLiteral("keysDialog"));
    setWindowTitle(tr("Keys"));
    setAttribute(Qt::WA_DeleteOnClose);
    auto* const scroll = new QScrollArea(this);
    scroll->setAccessibleName(tr("Keys and what they do"));
    scroll->setWidgetResizable(true);
    scroll->setWidget(makeList(scroll));
    auto* const close = new QPushButton(tr("Close"), this);
    connect(close, &QPushButton::clicked, this, &QDialog::accept);
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins(2 * kGap, 2 * kGap, 2 * kGap, 2 * kGap);
    layout->setSpacing(2 * kGap);
    layout->addWidget(scroll);
    layout->addWidget(close, 0, Qt::AlignRight);
    const QSize wanted(640, 560);
    resize(wanted.boundedTo(parent->window()->size() - QSize(4 * kGap, 4 * kGap)));
}

}  // namespace pantile::desktop
