/*
 * For the computer that builds: joins second boot stage, program and packed scenes, with their
 * checksums, into a file for the board's drive (USB Flashing Format, UF2).
 *
 *   uf2 BOOT.bin PROGRAM.bin PACKED.bin SHOW.uf2
 */
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define FLASH 0x10000000UL
#define FLASH_BYTES (2048UL * 1024)
#define BOOT_BYTES 252
#define WORDS_AT 256
#define PROGRAM_AT 264
#define PACKED_AT 32768UL
#define SECTOR 4096UL
#define PAYLOAD 256UL
#define BLOCK 512

static uint8_t flash[FLASH_BYTES];

static void put(uint8_t *to, uint32_t value) {
  to[0] = (uint8_t)value;
  to[1] = (uint8_t)(value >> 8);
  to[2] = (uint8_t)(value >> 16);
  to[3] = (uint8_t)(value >> 24);
}

/* As the boot ROM has it: most significant bit first, not inverted. */
static uint32_t boot_crc(const uint8_t *bytes, size_t count) {
  uint32_t crc = 0xFFFFFFFFUL;
  while (count-- > 0) {
    int bit;
    crc ^= (uint32_t)*bytes++ << 24;
    for (bit = 0; bit < 8; bit++) {
      crc = crc & 0x80000000UL ? crc << 1 ^ 0x04C11DB7UL : crc << 1;
    }
  }
  return crc;
}

static uint32_t zip_crc(const uint8_t *bytes, size_t count) {
  uint32_t crc = 0xFFFFFFFFUL;
  while (count-- > 0) {
    int bit;
    crc ^= *bytes++;
    for (bit = 0; bit < 8; bit++) {
      crc = crc & 1 ? crc >> 1 ^ 0xEDB88320UL : crc >> 1;
    }
  }
  return ~crc;
}

static size_t read_file(const char *name, uint8_t *to, size_t most) {
  FILE *file = fopen(name, "rb");
  size_t count = file ? fread(to, 1, most, file) : 0;
  if (!file || ferror(file) || fgetc(file) != EOF) {
    fprintf(stderr, "%s: cannot be read, or is longer than %lu bytes\n", name, (unsigned long)most);
    exit(1);
  }
  fclose(file);
  return count;
}

int main(int count, char **words) {
  uint32_t length;
  uint32_t number;
  uint32_t blocks;
  FILE *file;
  if (count != 5) {
    fprintf(stderr, "uf2 BOOT.bin PROGRAM.bin PACKED.bin SHOW.uf2\n");
    return 2;
  }
  memset(flash, 0xFF, sizeof flash);
  memset(flash, 0, BOOT_BYTES);
  read_file(words[1], flash, BOOT_BYTES);
  put(flash + BOOT_BYTES, boot_crc(flash, BOOT_BYTES));
  length = (uint32_t)read_file(words[2], flash + PROGRAM_AT, PACKED_AT - PROGRAM_AT);
  /* The second boot stage copies words; what it would leave out is not under the checksum. */
  if (length == 0 || length % 4 != 0) {
    fprintf(stderr, "%s: has %lu bytes, must be whole words\n", words[2], (unsigned long)length);
    return 1;
  }
  put(flash + WORDS_AT, length / 4);
  put(flash + WORDS_AT + 4, zip_crc(flash + PROGRAM_AT, length));
  length = (uint32_t)read_file(words[3], flash + PACKED_AT, FLASH_BYTES - PACKED_AT);
  /* Whole sectors, as the boot ROM erases them. */
  blocks = (uint32_t)((PACKED_AT + length + SECTOR - 1) / SECTOR * (SECTOR / PAYLOAD));
  file = fopen(words[4], "wb");
  for (number = 0; file && number < blocks; number++) {
    uint8_t block[BLOCK] = {0};
    put(block, 0x0A324655UL);
    put(block + 4, 0x9E5D5157UL);
    put(block + 8, 0x00002000UL); /* a family is named */
    put(block + 12, (uint32_t)(FLASH + PAYLOAD * number));
    put(block + 16, PAYLOAD);
    put(block + 20, number);
    put(block + 24, blocks);
    put(block + 28, 0xE48BFF56UL); /* RP2040 */
    memcpy(block + 32, flash + PAYLOAD * number, PAYLOAD);
    put(block + BLOCK - 4, 0x0AB16F30UL);
    if (fwrite(block, 1, BLOCK, file) != BLOCK) {
      break;
    }
  }
  if (!file || number < blocks || fclose(file) != 0) {
    fprintf(stderr, "%s: cannot be written\n", words[4]);
    return 1;
  }
  return 0;
}
