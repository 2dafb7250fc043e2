/* head-read.c: from bytes to a JSON tree that can be trusted, and what stands first in it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/head-read.h"

#include "file/file-error.h"
#include "file/json-scan.h"
#include "panel/i18n.h"
#include "panel/shown.h"

#define VERSION 1

JsonNode *
pp_json_read (GBytes  *bytes,
              GError **error)
{
  g_autoptr (JsonParser) parser = json_parser_new_immutable ();
  g_autoptr (GError) broken = NULL;
  gsize length;
  const char *text = g_bytes_get_data (bytes, &length);

  if (!pp_json_scan (text, length, error))
    return NULL;
  if (json_parser_load_from_data (parser, text, (gssize) length, &broken))
    return json_parser_steal_root (parser);
  g_set_error_literal (error, PP_FILE_ERROR, PP_FILE_ERROR_SYNTAX, broken->message);
  return NULL;
}

void
pp_read_head (PpMembers  *members,
              const char *format)
{
  const char *found = NULL;
  double version = VERSION;

  pp_members_get_string (members, "format", PP_MUST_HAVE, &found);
  if (found != NULL && strcmp (found, format) != 0)
    {
      g_autofree char *shown = pp_shown (found);

      pp_reader_complain (members->reader, PP_FILE_ERROR_FORMAT, "format",
                          _("“%s” is not what can be opened here; that would be “%s”."), shown,
                          format);
    }
  pp_members_get_double (members, "version", PP_MUST_HAVE, &version);
  if (version > VERSION)
    pp_reader_complain (members->reader, PP_FILE_ERROR_VERSION, "version",
                        _("this was written by a later Petalpane; open it with that one."));
  else if (version != VERSION)
    pp_reader_complain (members->reader, PP_FILE_ERROR_VALUE, "version",
                        _("there is no such version of the format."));
}
