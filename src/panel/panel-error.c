/* panel-error.c: why a value cannot be part of a panel.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "panel/panel-error.h"

G_DEFINE_QUARK (pp-panel-error-quark, pp_panel_error)
