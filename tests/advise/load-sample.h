/* load-sample.h: a panel that comes with the program, as a test's beginning.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "panel/panel.h"

/* samples/NAME.petalpane. (transfer full) */
PpPanel *load_sample (const char *name);
