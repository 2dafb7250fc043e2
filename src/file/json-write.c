/* json-write.c: values one after the other, first without any space.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Whether an array may stand on one line is known only when it ends, so json-layout.c breaks the
 * lines of the whole text afterwards.
 */
#include "file/json-write.h"

#include "file/file-error.h"
#include "file/json-layout.h"
#include "panel/i18n.h"

#include <math.h>

struct _PpJsonWriter
{
  GString *text;
  GString *open; /* the bracket of each level */
  gboolean has_failed;
};

/* As g_return_if_fail (), kept in mind until the end. */
#define FAIL_UNLESS(self, good) \
  G_STMT_START \
  { \
    if (!(good)) \
      { \
        g_return_if_fail_warning (G_LOG_DOMAIN, G_STRFUNC, #good); \
        (self)->has_failed = TRUE; \
        return; \
      } \
  } \
  G_STMT_END

PpJsonWriter *
pp_json_writer_new (void)
{
  PpJsonWriter *self = g_new0 (PpJsonWriter, 1);

  self->text = g_string_new (NULL);
  self->open = g_string_new (NULL);
  return self;
}

void
pp_json_writer_free (PpJsonWriter *self)
{
  if (self == NULL)
    return;
  g_string_free (self->text, TRUE);
  g_string_free (self->open, TRUE);
  g_free (self);
}

static gboolean
is_in (const PpJsonWriter *self,
       char                bracket)
{
  return self->open->len > 0 && self->open->str[self->open->len - 1] == bracket;
}

/* A single value may stand outside everything. */
static gboolean
can_begin (const PpJsonWriter *self,
           const char         *name)
{
  if (is_in (self, '{'))
    return name != NULL && g_utf8_validate (name, -1, NULL);
  return name == NULL && (self->open->len > 0 || self->text->len == 0);
}

/* Everything that stands before a value. The last character tells whether it is the first one of
 * its object or array: a text ends in a quotation mark, so a bracket there is always structure. */
static void
begin_value (PpJsonWriter *self,
             const char   *name)
{
  if (self->open->len > 0 && self->text->str[self->text->len - 1] != '{'
      && self->text->str[self->text->len - 1] != '[')
    g_string_append_c (self->text, ',');
  if (name != NULL)
    {
      pp_json_append_string (self->text, name);
      g_string_append_c (self->text, ':');
    }
}

static void
append_token (PpJsonWriter *self,
              const char   *name,
              const char   *token)
{
  begin_value (self, name);
  g_string_append (self->text, token);
}

static void
begin_level (PpJsonWriter *self,
             const char   *name,
             char          bracket)
{
  begin_value (self, name);
  g_string_append_c (self->text, bracket);
  g_string_append_c (self->open, bracket);
}

static void
end_level (PpJsonWriter *self,
           char          bracket)
{
  g_string_truncate (self->open, self->open->len - 1);
  g_string_append_c (self->text, bracket);
}

void
pp_json_write_begin_object (PpJsonWriter *self,
                            const char   *name)
{
  FAIL_UNLESS (self, can_begin (self, name));
  begin_level (self, name, '{');
}

void
pp_json_write_end_object (PpJsonWriter *self)
{
  FAIL_UNLESS (self, is_in (self, '{'));
  end_level (self, '}');
}

void
pp_json_write_begin_array (PpJsonWriter *self,
                           const char   *name)
{
  FAIL_UNLESS (self, can_begin (self, name));
  begin_level (self, name, '[');
}

void
pp_json_write_end_array (PpJsonWriter *self)
{
  FAIL_UNLESS (self, is_in (self, '['));
  end_level (self, ']');
}

void
pp_json_write_string (PpJsonWriter *self,
                      const char   *name,
                      const char   *string)
{
  FAIL_UNLESS (self, can_begin (self, name));
  FAIL_UNLESS (self, string != NULL && g_utf8_validate (string, -1, NULL));
  begin_value (self, name);
  pp_json_append_string (self->text, string);
}

void
pp_json_write_number (PpJsonWriter *self,
                      const char   *name,
                      double        number)
{
  FAIL_UNLESS (self, can_begin (self, name));
  FAIL_UNLESS (self, isfinite (number));
  begin_value (self, name);
  pp_json_append_number (self->text, number);
}

void
pp_json_write_integer (PpJsonWriter *self,
                       const char   *name,
                       gint64        integer)
{
  FAIL_UNLESS (self, can_begin (self, name));
  begin_value (self, name);
  g_string_append_printf (self->text, "%" G_GINT64_FORMAT, integer);
}

void
pp_json_write_boolean (PpJsonWriter *self,
                       const char   *name,
                       gboolean      boolean)
{
  FAIL_UNLESS (self, can_begin (self, name));
  append_token (self, name, boolean ? "true" : "false");
}

void
pp_json_write_null (PpJsonWriter *self,
                    const char   *name)
{
  FAIL_UNLESS (self, can_begin (self, name));
  append_token (self, name, "null");
}

void
pp_json_write_members (PpJsonWriter *self,
                       const char   *members)
{
  FAIL_UNLESS (self, is_in (self, '{'));
  if (members == NULL || *members == '\0')
    return;
  begin_value (self, NULL);
  g_string_append (self->text, members);
}

GString *
pp_json_writer_finish (PpJsonWriter *self)
{
  GString *laid_out = NULL;

  if (!self->has_failed)
    {
      g_return_val_if_fail (self->open->len == 0 && self->text->len > 0, NULL);
      laid_out = pp_json_layout (self->text->str);
    }
  g_string_truncate (self->text, 0);
  g_string_truncate (self->open, 0);
  self->has_failed = FALSE;
  return laid_out;
}

gboolean
pp_json_was_written (const GString *text,
                     GError       **error)
{
  if (text != NULL)
    return TRUE;
  g_set_error_literal (error, PP_FILE_ERROR, PP_FILE_ERROR_VALUE,
                       _("It holds what no file can hold; nothing was written."));
  return FALSE;
}
