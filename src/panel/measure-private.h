/* measure-private.h: what showing and reading of measures share.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

/* International inch, exact since 1959. */
#define PP_MM_PER_INCH 25.4
