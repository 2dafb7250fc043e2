/* comma-locale.h: a test run where people write a decimal comma.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

/* Calls `test` in such a locale, one made for the occasion if none is installed, and goes back to
 * C. Where none can be made the test is skipped. */
void comma_locale_run (void (*test) (void));
