// Replaces operator new for the whole process: the library's calls come here too, since it imports operator new.
#include "allocations.h"

#include <cstdlib>
#include <new>

namespace {

long seen = 0;
long failing = -1;
bool counting = false;

void* allocate(std::size_t size) noexcept {
  if (counting && seen++ == failing) return nullptr;
  return std::malloc(size > 0 ? size : 1);
}

void* allocate_aligned(std::size_t size, std::size_t alignment) noexcept {
  if (counting && seen++ == failing) return nullptr;
  return std::aligned_alloc(alignment, (size + alignment) / alignment * alignment);
}

void* or_throw(void* memory) {
  if (memory == nullptr) throw std::bad_alloc();
  return memory;
}

}  // namespace

void allocations_begin(long fail_at) {
  seen = 0;
  failing = fail_at;
  counting = true;
}

long allocations_end() {
  counting = false;
  return seen;
}

void* operator new(std::size_t size) {
  return or_throw(allocate(size));
}
void* operator new[](std::size_t size) {
  return or_throw(allocate(size));
}
void* operator new(std::size_t size, const std::nothrow_t&) noexcept {
  return allocate(size);
}
void* operator new[](std::size_t size, const std::nothrow_t&) noexcept {
  return allocate(size);
}
void* operator new(std::size_t size, std::align_val_t alignment) {
  return or_throw(allocate_aligned(size, static_cast<std::size_t>(alignment)));
}
void* operator new[](std::size_t size, std::align_val_t alignment) {
  return or_throw(allocate_aligned(size, static_cast<std::size_t>(alignment)));
}
void operator delete(void* memory) noexcept {
  std::free(memory);
}
void operator delete[](void* memory) noexcept {
  std::free(memory);
}
void operator delete(void* memory, std::size_t) noexcept {
  std::free(memory);
}
void operator delete[](void* memory, std::size_t) noexcept {
  std::free(memory);
}
void operator delete(void* memory, const std::nothrow_t&) noexcept {
  std::free(memory);
}
void operator delete[](void* memory, const std::nothrow_t&) noexcept {
  std::free(memory);
}
void operator delete(void* memory, std::align_val_t) noexcept {
  std::free(memory);
}
void operator delete[](void* memory, std::align_val_t) noexcept {
  std::free(memory);
}
void operator delete(void* memory, std::size_t, std::align_val_t) noexcept {
  std::free(memory);
}
void operator delete[](void* memory, std::size_t, std::align_val_t) noexcept {
  std::free(memory);
}
