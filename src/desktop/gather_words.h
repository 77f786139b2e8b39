#pragma once

#include "core/result.h"
#include "desktop/views/notice_bar.h"
#include "tasks/gather.h"

namespace pantile::desktop {

/// What was added, was there already, and was refused, in words.
Notice gatherNotice(const core::Result<tasks::GatherReport>& report);

}  // namespace pantile::desktop
