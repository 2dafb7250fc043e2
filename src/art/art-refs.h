/* art-refs.h: what a value or a style sheet refers to.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Private to the judge.
 */
#pragma once

#include "art/art.h"

G_BEGIN_DECLS

typedef struct
{
  GPtrArray *ids;    /* of parts of the drawing itself, owned strings */
  double     pixels; /* of embedded pictures */
} PpArtRefs;

/* CSS with letters in place of its escapes. (transfer full) */
char    *pp_art_css_undo_escapes (const char  *css);

void     pp_art_refs_init        (PpArtRefs   *self);
void     pp_art_refs_clear       (PpArtRefs   *self);
/* A whole value that is an address, as of href. Adds to what was found.
 * Errors: PP_ART_ERROR_OUTSIDE for anything but "#id" or embedded PNG or JPEG. */
gboolean pp_art_refs_add_address (PpArtRefs   *self,
                                  const char  *address,
                                  GError     **error);
/* Style sheet, style attribute or any other value; whatever CSS would take for an address,
 * written with escapes or not. Errors: as above, and PP_ART_ERROR_SCRIPT for "javascript:". */
gboolean pp_art_refs_add_css     (PpArtRefs   *self,
                                  const char  *css,
                                  GError     **error);

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (PpArtRefs, pp_art_refs_clear)

G_END_DECLS
