/* i18n.h: marking of text for translation, the same in library and program.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "config.h"

#include <glib/gi18n-lib.h>
