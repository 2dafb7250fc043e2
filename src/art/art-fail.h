/* art-fail.h: a drawing refused.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Private to the judge.
 */
#pragma once

#include "art/art.h"
#include "panel/i18n.h"

G_BEGIN_DECLS

/* FALSE, with the error. */
static inline gboolean
pp_art_fail (GError     **error,
             PpArtError   code,
             const char  *text)
{
  g_set_error_literal (error, PP_ART_ERROR, (int) code, text);
  return FALSE;
}

static inline gboolean
pp_art_fail_outside (GError **error)
{
  return pp_art_fail (error, PP_ART_ERROR_OUTSIDE,
                      _("The drawing refers to something outside itself."));
}

G_END_DECLS
