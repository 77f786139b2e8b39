#pragma once

#include <QWidget>

class QSlider;
class QSpinBox;

namespace pantile::desktop {

/// A whole number that can be slid and typed.
class NumberSlider : public QWidget {
    Q_OBJECT

public:
    struct Range {
        int least = 0;
        int most = 100;
        int usual = 0;
        int step = 1;
    };

    /// `name` is the spin box's, for tests; `label` what both are called.
    NumberSlider(const char* name, const QString& label, Range range, QWidget* parent);

    int value() const;
    void setValue(int value);

    /// Words in place of the least number.
    void setLeastWords(const QString& words);
    void setSuffix(const QString& suffix);

Q_SIGNALS:
    void changed();

private:
    QSlider* m_slider;
    QSpinBox* m_number;
};

}  // namespace pantile::desktop
