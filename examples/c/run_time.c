/* The main job with the library loaded at run time: nothing of latchwork is linked, only its header is read.
   run_time LIBRARY BRIEF_FOLDER OUTPUT_FOLDER */
#include <dlfcn.h>
#include <latchwork/latchwork.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* Every function that is used: its name without latchwork_, and what it takes and gives. */
#define FUNCTIONS(X)                                                                                              \
  X(const char *, version, (void))                                                                                \
  X(latchwork_status, read_brief, (const char *, latchwork_brief **, latchwork_error *))                          \
  X(latchwork_status, brief_run,                                                                                  \
    (const latchwork_brief *, const latchwork_plan_options *, latchwork_job **, latchwork_error *))               \
  X(latchwork_status, brief_summary,                                                                              \
    (const latchwork_brief *, const latchwork_job *, char *, size_t, size_t *, latchwork_error *))                \
  X(latchwork_status, brief_write_job,                                                                            \
    (const latchwork_brief *, const latchwork_job *, const char *, latchwork_error *))                            \
  X(latchwork_status, job_verification, (const latchwork_job *, latchwork_verification *, latchwork_error *))     \
  X(void, job_destroy, (latchwork_job *))                                                                         \
  X(void, brief_destroy, (latchwork_brief *))

struct functions {
#define FIELD(returned, name, arguments) returned(*name) arguments;
  FUNCTIONS(FIELD)
#undef FIELD
};

/* ISO C has no cast from an object pointer to a function pointer; POSIX gives both one size, so the bytes are copied. */
static int load(void *library, struct functions *to) {
  void *found;
#define LOAD(returned, name, arguments)                         \
  found = dlsym(library, "latchwork_" #name);                   \
  if (found == NULL) {                                          \
    fprintf(stderr, "the library lacks latchwork_%s\n", #name); \
    return 1;                                                   \
  }                                                             \
  memcpy(&to->name, &found, sizeof found);
  FUNCTIONS(LOAD)
#undef LOAD
  return 0;
}

int main(int argc, char **argv) {
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_verification verification = LATCHWORK_VERIFICATION_INIT;
  struct functions latchwork;
  latchwork_brief *brief = NULL;
  latchwork_job *job = NULL;
  char *summary = NULL;
  size_t needed = 0;
  void *library;
  if (argc != 4) {
    fprintf(stderr, "run_time LIBRARY BRIEF_FOLDER OUTPUT_FOLDER\n");
    return 2;
  }
  library = dlopen(argv[1], RTLD_NOW | RTLD_LOCAL);
  if (library == NULL) {
    fprintf(stderr, "%s\n", dlerror());
    return 1;
  }
  if (load(library, &latchwork) != 0) return 1;
  printf("latchwork %s, loaded at run time\n", latchwork.version());
  if (latchwork.read_brief(argv[2], &brief, &error) == LATCHWORK_OK &&
      latchwork.brief_run(brief, NULL, &job, &error) == LATCHWORK_OK &&
      latchwork.brief_summary(brief, job, NULL, 0, &needed, &error) == LATCHWORK_OK &&
      (summary = malloc(needed)) != NULL &&
      latchwork.brief_summary(brief, job, summary, needed, NULL, &error) == LATCHWORK_OK &&
      latchwork.job_verification(job, &verification, &error) == LATCHWORK_OK &&
      latchwork.brief_write_job(brief, job, argv[3], &error) == LATCHWORK_OK) {
    printf("%s\n", summary);
  } else {
    fprintf(stderr, "%s\n", error.message);
  }
  free(summary);
  latchwork.job_destroy(job);
  latchwork.brief_destroy(brief);
  dlclose(library);
  return verification.verified ? 0 : 1;
}
